/** Sweeps of a brush in notes: they are no strokes, whether a file says what they are or a kit sends its snare's key. */
import { readFileSync } from 'node:fs';
import { isVoice, type Lesson, parseLesson, perform, Seconds, TakeDb } from '@shedbook/core';
import { expect, it } from 'vitest';
import { listenToNotes } from './listen-to-notes.ts';
import { strokesSent } from './notes.ts';

const FILE = new URL('../../../../demo/brushes-ballad.lesson.yaml', import.meta.url);
const BALLAD = parseLesson(readFileSync(FILE, 'utf8'), 'brushes-ballad').lesson as Lesson;
const FORM = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 4, ending: null } as const],
  repeat: 1,
  countInBars: 0,
};
const EXERCISE = 16;
const { strokes } = perform(BALLAD, { exercise: EXERCISE, form: FORM });
const SENT = strokes.flatMap((stroke) => (isVoice(stroke.voice) ? [{ ...stroke, voice: stroke.voice }] : []));
const sweeps = SENT.filter(({ articulation }) => articulation === 'sweep');

it('[LI8100] what a file calls a sweep is no stroke, and on one pad every key is the exercise’s voice', () => {
  expect(sweeps.length).toBeGreaterThan(0);
  expect(strokesSent(SENT)).toHaveLength(SENT.length - sweeps.length);
  expect(new Set(strokesSent(SENT, 'snare').map(({ voice }) => voice))).toEqual(new Set(['snare']));
});

it('[LI3100] [LI8100] what a kit’s snare sends where a brush is drawn is no stroke too many', () => {
  // definition: every stroke as it is written, the sweeps as the key of the snare's pad
  const notes = SENT.map(({ timeSeconds, voice, levelDb }) => ({
    ...{ timeSeconds: Seconds(timeSeconds + 1), voice, levelDb: TakeDb(levelDb) },
  }));
  const { report } = listenToNotes(notes, Seconds(60), { lesson: BALLAD, exercise: EXERCISE, form: FORM });
  const extra = Object.values(report?.voices ?? {}).map((voice) => voice.extra);
  expect(extra.length).toBeGreaterThan(0);
  expect(Math.max(...extra)).toBe(0);
});
