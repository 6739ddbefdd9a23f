import { expect, it } from 'vitest';
import { faintPlaces } from './faint.ts';
import type { Place } from './places.ts';
import type { Moment } from './plays.ts';

const PLACES = Array.from({ length: 6 }, (_, takeBar) => ({ takeBar }) as Place);
/** Six moments of some others with the voice, so much over as many without it. */
const moments = (over: { free: number; early: number }, others = 1): readonly Moment[] =>
  PLACES.flatMap((place, i) => {
    const without: Moment = { isOwn: false, others: 1, free: -5 + i / 6, early: -3 + i / 6, told: -6 };
    const { free, early } = { free: without.free + over.free, early: without.early + over.early };
    return [without, { ...without, isOwn: true, others, free, early, place }];
  });
const faintOf = (all: readonly Moment[], under: readonly Place[] = PLACES) => [
  ...faintPlaces(all, new Set(under)),
];

it('[LI7806] a stroke too faint under a louder one is not missing where both looks hear more than without it', () => {
  // definition: one unit parts six moments that lie within five sixths of a unit
  expect(faintOf(moments({ free: 1, early: 1 }))).toEqual(PLACES);
  expect(faintOf(moments({ free: 1, early: 1 }), PLACES.slice(1))).toEqual(PLACES.slice(1));
  // definition: by chance alone half of the pairs are the higher; and one look alone tells nothing
  expect(faintOf(moments({ free: 0, early: 0 }))).toEqual([]);
  expect(faintOf(moments({ free: 1, early: 0 }))).toEqual([]);
  // definition: what other voices sound like without it tells nothing of these
  expect(faintOf(moments({ free: 1, early: 1 }, 2))).toEqual([]);
});
