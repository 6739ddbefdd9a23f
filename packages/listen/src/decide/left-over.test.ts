import type { Voice } from '@shedbook/core';
import { expect, it } from 'vitest';
import type { HeardStroke } from './heard-stroke.ts';
import { leftOver, softVoices, untoldBeside } from './left-over.ts';
import type { Place } from './places.ts';
import type { Playing } from './plays.ts';

/** Eight strokes of a voice at a level, asked for at another. */
const heard = (voice: Voice, levelDb: number, askedDb: number): readonly HeardStroke[] =>
  Array.from({ length: 8 }, (_, index) => ({
    ...{ voice, levelDb, timeSeconds: index, confidence: 0.8 },
    place: { expected: { stroke: { levelDb: askedDb } } } as Place,
  }));

const OTHERS = [...heard('hihat', -20, -6), ...heard('bass', -15, 0)];

const NONE: ReadonlySet<Voice> = new Set();

it('[LI5305] is a voice far softer than asked beside the others, and no other', () => {
  const left = (...more: readonly HeardStroke[]) => [...leftOver([...OTHERS, ...more], NONE)];
  // definition: the others lie 14 and 15 dB under what is asked; the snare 30, 22, and, as a ghost note, 16
  expect(left(...heard('snare', -30, 0))).toEqual(['snare']);
  expect(left(...heard('snare', -22, 0))).toEqual([]);
  expect(left(...heard('snare', -30, -14))).toEqual([]);
  // two limbs of four; and what is struck where nothing is written tells nothing
  expect(left(...heard('snare', -35, 0), ...heard('hihat-foot', -40, -8))).toEqual(['snare', 'hihat-foot']);
  expect(left(...heard('snare', -30, 0).map((stroke) => ({ ...stroke, place: null })))).toEqual([]);
  // alone, nothing tells how loud anything is
  expect([...leftOver(heard('snare', -30, 0), NONE)]).toEqual([]);
});

it('[LI8511] is a voice somewhat softer than asked that neither look hears without the score', () => {
  const left = (levelDb: number, shy: readonly Voice[]) => [
    ...leftOver([...OTHERS, ...heard('hihat-foot', levelDb, -8)], new Set(shy)),
  ];
  // definition: the others lie 14 and 15 dB under what is asked, the foot 20 and 16
  expect(left(-28, ['hihat-foot'])).toEqual(['hihat-foot']);
  expect(left(-24, ['hihat-foot'])).toEqual([]);
  expect(left(-28, ['bass'])).toEqual([]);
});

it('[LI8512] is a voice that the score alone tells of, where nobody can say whether its limb plays', () => {
  const untold = (playing: Playing, shy: readonly Voice[]) => [
    ...untoldBeside({
      ...{ strokes: [...OTHERS, ...heard('hihat-foot', -22, -8)], shy: new Set(shy) },
      playing: new Map([['hihat-foot', playing]]),
    }),
  ];
  // definition: the foot is as loud as asked beside the others
  expect(untold('perhaps', ['hihat-foot'])).toEqual(['hihat-foot']);
  expect(untold('yes', ['hihat-foot'])).toEqual([]);
  expect(untold('perhaps', [])).toEqual([]);
});

it('[LI7803] what a loudspeaker plays alone is softer beside what both play, also where it is as loud as the student', () => {
  // definition: two sounds as loud, not in step, have twice the power of one, 3.01 dB
  const both = [...heard('hihat', 3.01, 0), ...heard('bass', -2.99, -6)];
  expect([...softVoices([...both, ...heard('snare', 0, 0)], 2)]).toEqual(['snare']);
  expect([...softVoices([...both, ...heard('snare', 3.01, 0)], 2)]).toEqual([]);
});
