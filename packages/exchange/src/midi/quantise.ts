/**
 * Played times to written slots: each beat of each voice takes the subdivision that explains its strokes best.
 *
 * Conventions: positions are in whole notes from the first bar line; errors are fractions of the beat; costs are in
 * nats. A subdivision costs the squared errors of its strokes over twice the player's variance, the logarithm of its
 * slots for every stroke (a finer one can explain anything), and how seldom this player uses it. The player's spread
 * and habits are learnt from the whole take in a few passes. Where a swing ratio is known, slots are looked for
 * where that swing plays them, and triplets are expected rather than eighths.
 * Source: the usual least description length for a normal error; the numbers are ours, tried on round trips with
 * random lateness.
 */
import {
  add,
  beatLength,
  beatStarts,
  type Fraction,
  fraction,
  isDotted,
  type Meter,
  multiply,
  performedPhase,
  SUBDIVISIONS,
  type Subdivision,
  type SwingRatio,
  toNumber,
} from '@shedbook/core';
import { groupBy } from '../patterns/group-by.ts';

/** Spread of a player before anything is known, and the least that is believed, as fractions of the beat. */
const SPREAD = { first: 0.03, least: 0.01 } as const;

/**
 * Furthest that a stroke may lie from its slot, as a fraction of the beat: never less than a little over the 1/15 by
 * which a swing of 1.5:1 misses the last triplet, never more than half of a sixteenth, and in between what the
 * player's own spread makes likely.
 */
export const TOLERANCE_BEATS = { least: 0.07, most: 0.125 } as const;

/** How many spreads away a stroke may still be meant: beyond, one in two thousand would be. */
const LIKELY_SPREADS = 3.5;

/** Passes over a take in which its player is learnt: habits sharpen, since misread beats grow fewer. */
const LEARNING_PASSES = 3;

/** Cost of a second stroke on one slot: it is then lost. */
const CLASH_COSTS = 20;

/** Cost of eighths or sixteenths where swing is known and triplets are expected. */
const EVEN_IN_SWING_COSTS = 1;

/** A written place: the bar from 0, and whole notes from its bar line. */
export interface QuantisedPlace {
  readonly bar: number;
  readonly inBar: Fraction;
}

/** What positions are fitted to. */
export interface Grid {
  readonly meter: Meter;
  readonly swing: SwingRatio | null;
  /** Fixed by the caller, or null to go by the player's own spread. */
  readonly toleranceBeats: number | null;
}

/** What is known of the player. */
interface Player {
  readonly spread: number;
  readonly toleranceBeats: number;
  /** Cost of using a subdivision at all. */
  readonly habit: (slots: Subdivision) => number;
}

interface BeatPlace {
  /** Beats from the first bar line. */
  readonly index: number;
  readonly phase: number;
}

/** The beat that a position belongs to: the one it lies in, or the next when it is just before it. */
function beatPlace(position: number, meter: Meter, toleranceBeats: number): BeatPlace {
  const bar = Math.floor(position / toNumber(meter.bar));
  const inBar = position - bar * toNumber(meter.bar);
  const starts = beatStarts(meter);
  const beat = starts.findLastIndex((start) => toNumber(start) <= inBar);
  const phase = (inBar - toNumber(starts[beat] as Fraction)) / toNumber(beatLength(meter, beat));
  const index = bar * starts.length + beat;
  return phase > 1 - toleranceBeats ? { index: index + 1, phase: phase - 1 } : { index, phase };
}

interface Choice {
  readonly slots: Subdivision;
  readonly slotOf: readonly number[];
  readonly errors: readonly number[];
  readonly cost: number;
}

function nearestSlot(phase: number, performed: readonly number[]): number {
  const distance = (slot: number) => Math.abs(phase - (performed[slot] as number));
  return performed.reduce((best, _, slot) => (distance(slot) < distance(best) ? slot : best), 0);
}

function choiceOf(
  slots: Subdivision,
  phases: readonly number[],
  dotted: boolean,
  grid: Grid,
  player: Player,
): Choice {
  const performed = Array.from({ length: slots }, (_, slot) =>
    performedPhase(slot, slots, dotted, grid.swing),
  );
  const slotOf = phases.map((phase) => nearestSlot(phase, performed));
  const errors = phases.map((phase, i) => Math.abs(phase - (performed[slotOf[i] as number] as number)));
  const clashes = slotOf.length - new Set(slotOf).size;
  const squares = errors.reduce((sum, error) => sum + error * error, 0);
  const explained = squares / (2 * player.spread ** 2) + phases.length * Math.log(slots);
  return { slots, slotOf, errors, cost: explained + player.habit(slots) + clashes * CLASH_COSTS };
}

interface ChosenBeat {
  readonly index: number;
  /** Positions in the voice's list. */
  readonly items: readonly number[];
  readonly choice: Choice;
}

function chooseBeats(positions: readonly number[], grid: Grid, player: Player): readonly ChosenBeat[] {
  const { meter } = grid;
  const placed = positions.map((position, item) => ({
    item,
    ...beatPlace(position, meter, player.toleranceBeats),
  }));
  return [...groupBy(placed, (each) => each.index)].map(([index, inBeat]) => {
    const dotted = isDotted(beatLength(meter, mod(index, meter.beats.length)));
    const phases = inBeat.map(({ phase }) => phase);
    const choices = SUBDIVISIONS.map((slots) => choiceOf(slots, phases, dotted, grid, player));
    const choice = choices.reduce((best, each) => (each.cost < best.cost ? each : best));
    return { index, items: inBeat.map(({ item }) => item), choice };
  });
}

function mod(a: number, n: number): number {
  return ((a % n) + n) % n;
}

function stranger(grid: Grid): Player {
  const even = (slots: Subdivision) => (slots === 2 || slots === 4 ? EVEN_IN_SWING_COSTS : 0);
  return {
    spread: SPREAD.first,
    toleranceBeats: grid.toleranceBeats ?? TOLERANCE_BEATS.least,
    habit: grid.swing?.of === 'eighths' ? even : () => 0,
  };
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor((values.length - 1) / 2)] ?? 0;
}

/** The player of a take after a pass over it: spread by the median error, habits by counted beats. */
function playerOf(beats: readonly ChosenBeat[], grid: Grid, before: Player): Player {
  // 1.4826 median deviations of a normal distribution are one standard deviation.
  const spread = Math.max(SPREAD.least, 1.4826 * median(beats.flatMap(({ choice }) => choice.errors)));
  const likely = Math.max(TOLERANCE_BEATS.least, LIKELY_SPREADS * spread);
  const divided = beats.filter(({ choice }) => choice.slots > 1);
  const count = (slots: Subdivision) => divided.filter(({ choice }) => choice.slots === slots).length;
  const share = new Map(SUBDIVISIONS.map((slots) => [slots, (count(slots) + 1) / (divided.length + 4)]));
  return {
    spread,
    toleranceBeats: grid.toleranceBeats ?? Math.min(TOLERANCE_BEATS.most, likely),
    habit: (slots) => before.habit(slots) + (slots === 1 ? 0 : -Math.log(share.get(slots) ?? 1)),
  };
}

function placesOf(count: number, beats: readonly ChosenBeat[], grid: Grid, player: Player) {
  const { meter } = grid;
  const starts = beatStarts(meter);
  const result: (QuantisedPlace | null)[] = Array.from({ length: count }, () => null);
  for (const { index, items, choice } of beats) {
    const beat = mod(index, starts.length);
    const taken = new Set<number>();
    items.forEach((item, i) => {
      const slot = choice.slotOf[i] as number;
      if ((choice.errors[i] as number) > player.toleranceBeats || taken.has(slot)) return;
      taken.add(slot);
      const inBeat = multiply(beatLength(meter, beat), fraction(slot, choice.slots));
      result[item] = { bar: Math.floor(index / starts.length), inBar: add(starts[beat] as Fraction, inBeat) };
    });
  }
  return result;
}

/**
 * The written places of the strokes of several voices, or null for a stroke that lies on no slot, or on one that is
 * taken.
 * @param voices for each voice its positions in whole notes from the first bar line, in any order
 */
export function quantise(
  voices: readonly (readonly number[])[],
  grid: Grid,
): readonly (readonly (QuantisedPlace | null)[])[] {
  const unknown = stranger(grid);
  let player = unknown;
  for (let pass = 0; pass < LEARNING_PASSES; pass += 1) {
    const heard = voices.flatMap((positions) => chooseBeats(positions, grid, player));
    player = playerOf(heard, grid, unknown);
  }
  const last = player;
  return voices.map((positions) =>
    placesOf(positions.length, chooseBeats(positions, grid, last), grid, last),
  );
}
