/** On which side of the body a limb is. */
import { type Limb, type SetUp, sideOf } from '@shedbook/core';

/** A side, as the drummer sees it. */
export type Side = 'left' | 'right';

/** The side of a limb. */
export function sideOfLimb(limb: Limb, setUp: SetUp): Side {
  return sideOf(limb, setUp).startsWith('right') ? 'right' : 'left';
}

const PAIRS: readonly (readonly [Limb, Limb])[] = [
  ['lead hand', 'other hand'],
  ['lead foot', 'other foot'],
];

/** Hands, then feet, each from left to right. */
export function sidesOf(setUp: SetUp): readonly (readonly [Limb, Side])[] {
  return PAIRS.flatMap((pair) =>
    pair
      .map((limb) => [limb, sideOfLimb(limb, setUp)] as const)
      .toSorted(([, a], [, b]) => (a === b ? 0 : a === 'left' ? -1 : 1)),
  );
}
