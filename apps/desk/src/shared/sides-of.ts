/** On which side of the body a limb is. */
import { LIMBS, type Limb, type SetUp, sideOf } from '@shedbook/core';

/** A side, as the drummer sees it. */
export type Side = 'left' | 'right';

/** The side of a limb. */
export function sideOfLimb(limb: Limb, setUp: SetUp): Side {
  return sideOf(limb, setUp).startsWith('right') ? 'right' : 'left';
}

/** Hands, then feet, each from left to right. */
export function sidesOf(setUp: SetUp): readonly (readonly [Limb, Side])[] {
  const sides = LIMBS.map((limb) => [limb, sideOfLimb(limb, setUp)] as const);
  return (['hand', 'foot'] as const).flatMap((kind) =>
    (['left', 'right'] as const).flatMap((side) =>
      sides.filter(([limb, its]) => limb.endsWith(kind) && its === side),
    ),
  );
}
