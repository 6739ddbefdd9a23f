/**
 * Grids: the number of equal slots that a beat is looked at with.
 *
 * Conventions: a grid position is `slot` of `slots`, both whole; reducing keeps the places and takes the
 * coarsest grid that has them all.
 */
import { greatestCommonDivisor } from './fraction.ts';

/** Least common multiple of grids, e.g. 3 and 4 slots fit in 12. */
export function commonGrid(slots: readonly number[]): number {
  return slots.reduce((common, each) => (common * each) / greatestCommonDivisor(common, each), 1);
}

/**
 * The coarsest grid that still has every struck slot.
 * @example reduceGrid(6, [0, 4]) // { slots: 3, struck: [0, 2] }
 */
export function reduceGrid(
  slots: number,
  struck: readonly number[],
): { readonly slots: number; readonly struck: readonly number[] } {
  const divisor = struck.reduce(greatestCommonDivisor, slots);
  return { slots: slots / divisor, struck: struck.map((slot) => slot / divisor) };
}
