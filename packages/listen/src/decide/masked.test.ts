import type { Voice } from '@shedbook/core';
import { expect, it } from 'vitest';
import type { HeardStroke } from './heard-stroke.ts';
import { maskedPlaces } from './masked.ts';
import type { Place } from './places.ts';

const BARS = 6;
/** One place in each bar. */
const placesOf = (voice: Voice, position: number): readonly Place[] =>
  Array.from({ length: BARS }, (_, takeBar) => ({ takeBar, expected: { voice, position } }) as Place);
const heardAt = (places: readonly Place[], levelDb: number): readonly HeardStroke[] =>
  places.map((place) => ({
    ...{ voice: place.expected.voice, timeSeconds: place.takeBar, levelDb, place, confidence: 1 },
  }));

const [open, under] = [placesOf('bass', 0.5), placesOf('bass', 0)];
/** A bass drum that is heard on 3, and not under what sounds on 1. */
const lostUnder = (other: Voice, overDb: number, alsoHeard: readonly Place[] = []) => [
  ...maskedPlaces(
    [...heardAt([...open, ...alsoHeard], -10), ...heardAt(placesOf(other, 0), -10 + overDb)],
    under.filter((place) => !alsoHeard.includes(place)),
  ),
];

it('[LI8700] a stroke that a far louder one masks is not missing, of a voice that is heard elsewhere', () => {
  // definition: the bound is 14 dB; a ride goes on all along and masks nothing
  expect(lostUnder('snare', 20)).toEqual(under);
  expect(lostUnder('snare', 10)).toEqual([]);
  expect(lostUnder('ride', 20)).toEqual([]);
  // definition: who is heard there in four bars of six left out the other two
  expect(lostUnder('snare', 20, under.slice(0, 4))).toEqual([]);
  // definition: of a limb that stays out nothing is masked
  expect([...maskedPlaces(heardAt(placesOf('snare', 0), 0), [...open, ...under])]).toEqual([]);
});
