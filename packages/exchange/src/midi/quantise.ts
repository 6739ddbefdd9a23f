/**
 * Played times to written slots: each beat of each voice takes the subdivision that its strokes lie nearest to.
 *
 * Conventions: `position` is in whole notes from the first bar line; an error is a fraction of the beat. A coarser
 * subdivision wins where a finer one is hardly nearer, so that a late quarter stays a quarter. Where a swing ratio
 * is known, slots are looked for where that swing plays them, and triplets are tried before eighths.
 * Differs from the source: there is none; the weights are ours and tried on our own round trips.
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
  type Subdivision,
  type SwingRatio,
  toNumber,
} from '@shedbook/core';
import { groupBy } from '../patterns/group-by.ts';

/** What a step to the next finer subdivision must gain, as a fraction of the beat. */
const FINER_COSTS = 0.005;

/**
 * Furthest that a stroke may lie from its slot, as a fraction of the beat, when nothing else is asked for: a
 * little more than the 1/15 by which a swing of 1.5:1 misses the last triplet.
 */
export const TOLERANCE_BEATS = 0.07;

/** A written place: the bar from 0, and whole notes from its bar line. */
export interface QuantisedPlace {
  readonly bar: number;
  readonly inBar: Fraction;
}

/** What positions are fitted to. */
export interface Grid {
  readonly meter: Meter;
  readonly swing: SwingRatio | null;
  readonly toleranceBeats: number;
}

interface BeatPlace {
  /** Beats from the first bar line. */
  readonly index: number;
  readonly phase: number;
}

function orderFor(swing: SwingRatio | null): readonly Subdivision[] {
  return swing?.of === 'eighths' ? [1, 3, 2, 6, 4] : [1, 2, 3, 4, 6];
}

/** The beat that a position belongs to: the one it lies in, or the next when it is just before it. */
function beatPlace(position: number, grid: Grid): BeatPlace {
  const { meter } = grid;
  const bar = Math.floor(position / toNumber(meter.bar));
  const inBar = position - bar * toNumber(meter.bar);
  const starts = beatStarts(meter);
  const beat = starts.findLastIndex((start) => toNumber(start) <= inBar);
  const phase = (inBar - toNumber(starts[beat] as Fraction)) / toNumber(beatLength(meter, beat));
  const index = bar * starts.length + beat;
  return phase > 1 - grid.toleranceBeats ? { index: index + 1, phase: phase - 1 } : { index, phase };
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

function choose(phases: readonly number[], dotted: boolean, grid: Grid): Choice {
  const choices = orderFor(grid.swing).map((slots, order): Choice => {
    const performed = Array.from({ length: slots }, (_, slot) =>
      performedPhase(slot, slots, dotted, grid.swing),
    );
    const slotOf = phases.map((phase) => nearestSlot(phase, performed));
    const errors = phases.map((phase, i) => Math.abs(phase - (performed[slotOf[i] as number] as number)));
    const clashes = slotOf.length - new Set(slotOf).size;
    const square = errors.reduce((sum, error) => sum + error * error, 0) / errors.length;
    return { slots, slotOf, errors, cost: clashes + Math.sqrt(square) + order * FINER_COSTS };
  });
  return choices.reduce((best, choice) => (choice.cost < best.cost ? choice : best));
}

/**
 * The written places of one voice's strokes, or null for a stroke that lies on no slot, or on one that is taken.
 * @param positions in whole notes from the first bar line, in any order
 */
export function quantise(positions: readonly number[], grid: Grid): readonly (QuantisedPlace | null)[] {
  const { meter } = grid;
  const starts = beatStarts(meter);
  const placed = positions.map((position, item) => ({ item, ...beatPlace(position, grid) }));
  const result: (QuantisedPlace | null)[] = positions.map(() => null);
  for (const [index, inBeat] of groupBy(placed, (each) => each.index)) {
    const beat = index % starts.length;
    const length = beatLength(meter, beat);
    const choice = choose(
      inBeat.map(({ phase }) => phase),
      isDotted(length),
      grid,
    );
    const taken = new Set<number>();
    inBeat.forEach(({ item }, i) => {
      const slot = choice.slotOf[i] as number;
      if ((choice.errors[i] as number) > grid.toleranceBeats || taken.has(slot)) return;
      taken.add(slot);
      const inBar = add(starts[beat] as Fraction, multiply(length, fraction(slot, choice.slots)));
      result[item] = { bar: Math.floor(index / starts.length), inBar };
    });
  }
  return result;
}
