/** What a take is said to be of, where a limb stayed out of it or it is of another lesson. */
import { type Form, isVoice, type Lesson, perform, Seconds, TakeDb, type Voice } from '@shedbook/core';
import { listenToNotes, type PlayedNote } from '@shedbook/listen';
import { expect, it } from 'vitest';
import { sheetNamed } from '../../../internal/testing/stories/lessons.mjs';
import { whichExercise } from './which-exercise.ts';

const SLOW = sheetNamed('slow-blues') as Lesson;
const SAMBA = sheetNamed('samba') as Lesson;
const WALTZ = sheetNamed('jazz-waltz') as Lesson;
const LIMBS = sheetNamed('limb-by-limb') as Lesson;
const SECONDS = Seconds(60);

const loopOf = (bars: number): Form => ({
  name: 'loop',
  sections: [{ play: 'pattern', bars, ending: null }],
  repeat: 1,
  countInBars: 0,
});

/** The notes of an exercise, or of the groove, without some limbs. */
function notesOf(lesson: Lesson, exercise: number | null, without: readonly Voice[] = []) {
  const { strokes } = perform(lesson, { exercise, form: loopOf(8) });
  return strokes.flatMap(({ voice, timeSeconds, levelDb }): PlayedNote[] =>
    isVoice(voice) && !without.includes(voice)
      ? [{ voice, timeSeconds: Seconds(timeSeconds + 1), levelDb: TakeDb(levelDb) }]
      : [],
  );
}

function told(lesson: Lesson, notes: readonly PlayedNote[]) {
  const hearAs = (exercise: number | null) =>
    listenToNotes(notes, SECONDS, { lesson, exercise, form: loopOf(4) });
  return whichExercise(lesson, lesson.exercises, hearAs)?.told ?? null;
}

it('[JU8102] an exercise is told by the limbs that play it, though the one with most of the strokes stays out', () => {
  // definition: the very strokes of an exercise are that exercise; five sixths of those written may be the ride's
  const heard = SLOW.exercises.map(({ number }) => told(SLOW, notesOf(SLOW, number, ['ride'])));
  expect(heard).toEqual(
    SLOW.exercises.map(({ number }) => ({ fact: 'exercise-most-like', exercise: number })),
  );
});

it('[JU8103] the groove alone was played only where every limb of it was; of another groove nothing is told', () => {
  expect(told(SLOW, notesOf(SLOW, null))).toEqual({ fact: 'time-played' });
  expect(told(SLOW, notesOf(SLOW, null, ['hihat-foot']))).toEqual({ fact: 'time-most-like' });
  expect(told(WALTZ, notesOf(SAMBA, 1))).toBeNull();
});

it('[JU8104] of the same strokes in two sections those at the tempo that was played are meant', () => {
  // definition: 54 quarter notes a minute are asked in the second section, 60 in the first
  expect(told(LIMBS, notesOf(LIMBS, 6))).toMatchObject({ exercise: 6 });
});

it('[JU8700] an exercise all of whose own strokes may be a loudspeaker’s was not played: it was the groove alone', () => {
  const notes = notesOf(SLOW, null);
  const hearAs = (exercise: number | null) => {
    const heard = listenToNotes(notes, SECONDS, { lesson: SLOW, exercise, form: loopOf(4) });
    if (exercise === null || !heard.report) return heard;
    // what a recording says of a voice that comes as a machine's does
    const { snare: _, ...voices } = heard.report.voices;
    const unheard = [{ reason: 'from-loudspeaker', voice: 'snare', count: 6 } as const];
    return { ...heard, report: { ...heard.report, voices, unheard, exercise: { agreement: 1 } } };
  };
  expect(whichExercise(SLOW, SLOW.exercises, hearAs)?.told).toEqual({ fact: 'time-played' });
});

it('[JU8701] an exercise is found though the first of its section leads to no other', () => {
  const last = SLOW.exercises.at(-1)?.number ?? 0;
  const notes = notesOf(SLOW, last);
  const hearAs = (exercise: number | null) => {
    const heard = listenToNotes(notes, SECONDS, { lesson: SLOW, exercise, form: loopOf(4) });
    if (exercise === null || exercise === last || !heard.report) return heard;
    // as where the ear has half a bar for the beginning of one: nothing is likelier from there
    const alignment = { ...heard.report.alignment, confidence: 0.4 };
    return { ...heard, report: { ...heard.report, alignment, exercise: { agreement: 0.3 } } };
  };
  expect(whichExercise(SLOW, SLOW.exercises, hearAs)?.told).toEqual({
    fact: 'exercise-played',
    exercise: last,
  });
});
