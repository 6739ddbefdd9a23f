import { Bpm } from '@shedbook/core';
import { expect, it } from 'vitest';
import { type NotHeardInput, unheardOf } from './not-heard.ts';
import type { Playing } from './plays.ts';

const feet = (count: number) => Array.from({ length: count }, () => ({ expected: { voice: 'hihat-foot' } }));

/** What is said of a foot without a stroke. @param before places in the bars before those that are reported on */
const ofSilentFoot = (playing: Playing, places = 3, before = 0) =>
  unheardOf({
    ...{ bpm: Bpm(120), askedBpm: Bpm(120), confidence: 1 },
    evidence: [{ voice: 'hihat-foot', doubt: 0 }],
    ...{ places: feet(places), learntFrom: feet(places + before) },
    decision: { strokes: [], playing: new Map([['hihat-foot', playing]]), clear: new Set() },
  } as unknown as NotHeardInput);

it('[LI78] calls a limb without a stroke unheard only where it surely stays out', () => {
  // definition: what is not known is not said
  expect(ofSilentFoot('perhaps')).toEqual([{ reason: 'hard-to-tell', voice: 'hihat-foot' }]);
  expect(ofSilentFoot('no')).toEqual([{ reason: 'not-heard', voice: 'hihat-foot' }]);
  // of two strokes nobody knows: the rim shot that ends four bars is lost under its crash in recordings of our own
  expect(ofSilentFoot('no', 2)).toEqual([{ reason: 'hard-to-tell', voice: 'hihat-foot' }]);
});

it('[LI8501] tells a limb of two strokes a bar by the bars before it as well', () => {
  // definition: the same limb, of which the whole take says that it stays out
  expect(ofSilentFoot('no', 2, 6)).toEqual([{ reason: 'not-heard', voice: 'hihat-foot' }]);
});

it('[LI1103] calls a voice no guess whose places hardly mix with others, however shy its evidence', () => {
  const of = (clear: readonly string[]) =>
    unheardOf({
      ...{ bpm: Bpm(120), askedBpm: Bpm(120), confidence: 1 },
      evidence: [{ voice: 'hihat-foot', doubt: 1 }],
      ...{ places: [{ expected: { voice: 'hihat-foot' } }], learntFrom: [] },
      decision: {
        strokes: [{ voice: 'hihat-foot', place: {} }],
        playing: new Map([['hihat-foot', 'yes']]),
        clear: new Set(clear),
      },
    } as unknown as NotHeardInput);
  // definition: every stroke may be wrong by its evidence alone
  expect(of([])).toEqual([{ reason: 'hard-to-tell', voice: 'hihat-foot' }]);
  expect(of(['hihat-foot'])).toEqual([]);
});
