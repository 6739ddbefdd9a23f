/** Exercises in which hardly anything is written, heard from a kit's notes of one bar. */
import { isVoice, type Lesson, perform, Seconds, TakeDb } from '@shedbook/core';
import { listenToNotes, type PlayedNote } from '@shedbook/listen';
import { expect, it } from 'vitest';
import { sheetNamed } from '../../../internal/testing/stories/lessons.mjs';
import { type Judgement, judge } from './index.ts';

const lesson = sheetNamed('dialogue') as Lesson;
const form = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 1, ending: null } as const],
  repeat: 1,
  countInBars: 0,
};

function notesOf(exercise: number): readonly PlayedNote[] {
  return perform(lesson, { exercise, form }).strokes.flatMap(({ voice, timeSeconds, levelDb }) =>
    isVoice(voice) ? [{ voice, timeSeconds: Seconds(timeSeconds + 1), levelDb: TakeDb(levelDb) }] : [],
  );
}

function judged(asked: number, notes: readonly PlayedNote[]): Judgement {
  const task = { lesson, exercise: asked, form };
  return judge(task, listenToNotes(notes, Seconds(4), task), 'beginner');
}

it('[JU13] another exercise is named from one bar in which hardly anything is written', () => {
  const numbers = lesson.exercises.map(({ number }) => number);
  const told = (asked: number, played: number) =>
    judged(asked, notesOf(played)).verdict.about.flatMap(({ exercise }) => exercise ?? []);
  // definition: the very strokes of an exercise are that exercise
  const said = numbers.flatMap((asked) => numbers.map((played) => told(asked, played)));
  expect(said).toEqual(
    numbers.flatMap((asked) => numbers.map((played) => (asked === played ? [] : [played]))),
  );
});

it('[JU14] what is struck elsewhere did not stay out', () => {
  const snare = notesOf(1).find(({ voice }) => voice === 'snare');
  const others = notesOf(1).filter(({ voice }) => voice !== 'snare');
  // definition: 90 quarter notes a minute are three eighths a second; two eighths early, where no exercise has it
  const early = { ...(snare as PlayedNote), timeSeconds: Seconds((snare?.timeSeconds ?? 0) - 1 / 3) };
  const notes = [...others, early].toSorted((a, b) => a.timeSeconds - b.timeSeconds);
  expect(judged(1, notes).verdict.about[0]).toMatchObject({
    ...{ what: 'missing', voice: 'snare', times: 1, of: 1, elsewhere: 1 },
  });
  expect(judged(1, others).verdict.about[0]).not.toHaveProperty('elsewhere');
});
