import { Bpm, formatPattern, isVoice, type Lesson, parseLesson, perform } from '@shedbook/core';
import { type StruckVoice, type Transcript, transcribeNotes } from '@shedbook/listen';
import { expect, it } from 'vitest';
import { withExercises } from '../edit/exercises.ts';
import { keepablesOf, keptOf } from './heard-exercises.ts';

const TEXT = `title: Swing
tempo: 110
feel: triplet
groove: {ride: "x x.x x x.x", hihat-foot: ". x . x"}
exercises:
  - ..x ... x.x ...
  - x.. ..x ... ..x
`;
const lesson = parseLesson(TEXT, 'test').lesson as Lesson;

/** What is heard of an exercise that is played in four bars. */
function heardOf(exercise: number | null): Transcript {
  const sections = [{ play: exercise === null ? 'time' : 'pattern', bars: 4, ending: null } as const];
  const form = { name: 'four', sections, repeat: 1, countInBars: 0 };
  const { strokes } = perform(lesson, { exercise, form, bpm: Bpm(110) });
  const notes = strokes.flatMap(({ voice, timeSeconds, levelDb }): StruckVoice[] =>
    isVoice(voice) ? [{ voice, timeSeconds, levelDb }] : [],
  );
  const { transcript } = transcribeNotes(notes, { meter: lesson.meter, feel: lesson.feel });
  if (!transcript) throw new Error('nothing was heard');
  return transcript;
}

it('[ST193] keeps what is played over the groove as an exercise of the lesson, the groove only where it is wanted', () => {
  const all = keepablesOf(heardOf(1), lesson);
  expect(all.map(({ of, isWanted }) => [of, isWanted])).toEqual([
    ['exercise', true],
    ['groove', false],
  ]);
  // definition: what was played is what is written
  const [first] = lesson.exercises;
  const snare = formatPattern(first!.parts[0]!.pattern);
  const text = withExercises(TEXT, lesson, keptOf(all, new Set([0, 1])));
  const { lesson: after, problems } = parseLesson(text, 'test');
  expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  const textsOf = (index: number) =>
    after?.exercises[index]?.parts.map(({ voice, pattern }) => `${voice} ${formatPattern(pattern)}`);
  expect(textsOf(0)).toEqual([`snare ${snare}`]);
  expect(textsOf(1)?.toSorted()).toEqual(
    lesson.groove.map(({ voice, pattern }) => `${voice} ${formatPattern(pattern)}`).toSorted(),
  );
});

it('[ST193] offers a groove that the lesson has already without asking for it to be kept', () => {
  const [groove, ...others] = keepablesOf(heardOf(null), lesson);
  expect(others).toEqual([]);
  expect(groove).toMatchObject({ of: 'groove', isWanted: false });
  const [other] = keepablesOf(heardOf(null), { ...lesson, groove: [] });
  expect(other?.isWanted).toBe(true);
});
