/**
 * The subdivision of each beat of a voice that explains its strokes best.
 *
 * Conventions: positions are in whole notes from the first bar line; errors are fractions of the beat; costs are in
 * nats. A subdivision costs the squared errors of its strokes over twice the player's variance, the logarithm of its
 * slots for every stroke (a finer one can explain anything), and how seldom this player uses it.
 * Source: the usual least description length for a normal error; the numbers are ours, tried on round trips with
 * random lateness.
 */
import type { SwingRatio } from '../feel/feel.ts';
import { isDotted, performedPhase } from '../feel/swing.ts';
import { groupBy } from '../group-by.ts';
import { PLAYED_SUBDIVISIONS, SUBDIVISIONS, type Subdivision } from '../rhythm/cell.ts';
import { type Fraction, toNumber } from '../rhythm/fraction.ts';
import { beatLength, beatStarts, type Meter } from '../rhythm/meter.ts';

/**
 * How near its slot every stroke of a beat lies that was written and not played, as fractions of the beat: rounding
 * alone, or the tick of a file of 480 a quarter where three strokes or more agree.
 */
const WRITTEN = { always: 1e-6, several: 1 / 900 } as const;

/** Cost of a second stroke on one slot: it is then lost. */
const CLASH_COSTS = 20;

/** What positions are fitted to. */
export interface Grid {
  readonly meter: Meter;
  readonly swing: SwingRatio | null;
  /** Fixed by the caller, or null to go by the player's own spread. */
  readonly toleranceBeats: number | null;
}

/** What is known of the player. */
export interface Player {
  /** Standard deviation of lateness, as a fraction of a beat. */
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

/** A subdivision with the slot and the error of each stroke. */
export interface Choice {
  readonly slots: Subdivision;
  /** Index of the slot of each stroke. */
  readonly slotOf: readonly number[];
  /** How far each stroke is from its slot, as a fraction of the beat. */
  readonly errors: readonly number[];
  /** How little it explains: a negative log-likelihood in nats; no unit. */
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

/** A beat of a voice with what was chosen for it; beats count from the first bar line. */
export interface ChosenBeat {
  readonly index: number;
  /** Positions in the voice's list. */
  readonly items: readonly number[];
  readonly choice: Choice;
}

function isPlayed({ slots }: Choice): boolean {
  return PLAYED_SUBDIVISIONS.some((each) => each === slots);
}

/** The coarsest choice without an error where it is five, seven or eight: nobody plays so exactly by chance. */
function writtenChoice(choices: readonly Choice[]): Choice | null {
  const most = (choices[0]?.errors.length ?? 0) >= 3 ? WRITTEN.several : WRITTEN.always;
  const written = choices.find(({ errors }) => errors.every((error) => error <= most));
  return written && !isPlayed(written) ? written : null;
}

function likeliest(choices: readonly Choice[]): Choice {
  return choices.filter(isPlayed).reduce((best, each) => (each.cost < best.cost ? each : best));
}

/** Chooses for every beat in which a voice has strokes. */
export function chooseBeats(positions: readonly number[], grid: Grid, player: Player): readonly ChosenBeat[] {
  const { meter } = grid;
  const placed = positions.map((position, item) => ({
    item,
    ...beatPlace(position, meter, player.toleranceBeats),
  }));
  return [...groupBy(placed, (each) => each.index)].map(([index, inBeat]) => {
    const dotted = isDotted(beatLength(meter, mod(index, meter.beats.length)));
    const phases = inBeat.map(({ phase }) => phase);
    const choices = SUBDIVISIONS.map((slots) => choiceOf(slots, phases, dotted, grid, player));
    const choice = writtenChoice(choices) ?? likeliest(choices);
    return { index, items: inBeat.map(({ item }) => item), choice };
  });
}

/** The remainder that is never negative. */
export function mod(a: number, n: number): number {
  return ((a % n) + n) % n;
}
