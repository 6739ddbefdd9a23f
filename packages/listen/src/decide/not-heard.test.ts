import { Bpm } from '@shedbook/core';
import { expect, it } from 'vitest';
import { type NotHeardInput, unheardOf } from './not-heard.ts';
import type { Playing } from './plays.ts';

it('[LI78] calls a limb without a stroke unheard only where it surely stays out', () => {
  const of = (playing: Playing, places = 3) =>
    unheardOf({
      ...{ bpm: Bpm(120), askedBpm: Bpm(120), confidence: 1 },
      evidence: [{ voice: 'hihat-foot', doubt: 0 }],
      places: Array.from({ length: places }, () => ({ expected: { voice: 'hihat-foot' } })),
      decision: { strokes: [], playing: new Map([['hihat-foot', playing]]), parted: new Set() },
    } as unknown as NotHeardInput);
  // definition: what is not known is not said
  expect(of('perhaps')).toEqual([{ reason: 'hard-to-tell', voice: 'hihat-foot' }]);
  expect(of('no')).toEqual([{ reason: 'not-heard', voice: 'hihat-foot' }]);
  // of two strokes nobody knows: the rim shot that ends four bars is lost under its crash in recordings of our own
  expect(of('no', 2)).toEqual([{ reason: 'hard-to-tell', voice: 'hihat-foot' }]);
});

it('[LI1103] calls a voice no guess whose places hardly mix with others, however shy its evidence', () => {
  const of = (parted: readonly string[]) =>
    unheardOf({
      ...{ bpm: Bpm(120), askedBpm: Bpm(120), confidence: 1 },
      evidence: [{ voice: 'hihat-foot', doubt: 1 }],
      places: [{ expected: { voice: 'hihat-foot' } }],
      decision: {
        strokes: [{ voice: 'hihat-foot', place: {} }],
        playing: new Map([['hihat-foot', 'yes']]),
        parted: new Set(parted),
      },
    } as unknown as NotHeardInput);
  // definition: every stroke may be wrong by its evidence alone
  expect(of([])).toEqual([{ reason: 'hard-to-tell', voice: 'hihat-foot' }]);
  expect(of(['hihat-foot'])).toEqual([]);
});
