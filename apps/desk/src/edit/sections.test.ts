import { formatPattern, type Lesson, parseLesson, sectionsOf } from '@shedbook/core';
import { expect, it } from 'vitest';
import { ownLesson } from '../students/own-lesson.ts';
import { homeOf, insertExercise, withExercises, withMoved } from './exercises.ts';
import { setSetUp } from './heading.ts';
import { moveSection, removeSection, setSection } from './sections.ts';

/** Nothing refers to any exercise. */
const NONE_IN_USE = { exercises: [] };

const TEXT = `title: Two hands
exercises:
  - x . . . # before all
sections:
  - heading: The one hand # soft
    exercises:
      - x x . . # first
      - {pattern: . . x x, sticking: R L}
  - heading: The other
    groove: {bass: x . x .}
    exercises:
      - x x x . # last
`;

function read(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

const patterns = (text: string) =>
  sectionsOf(read(text)).map(({ exercises }) =>
    exercises.map(({ parts }) => formatPattern(parts[0]?.pattern ?? { bars: [] })),
  );

it('[ST190] writes an exercise where it stands, and leaves the other sections alone', () => {
  const lesson = read(TEXT);
  const home = homeOf(lesson, 2);
  expect([home.index, home.at, home.section.heading]).toEqual([1, 1, 'The one hand']);
  const more = withExercises(TEXT, home.section, insertExercise(home.section, 2), home.index);
  expect(patterns(more)).toEqual([['x . . .'], ['x x . .', '. . x x', '. . . .'], ['x x x .']]);
  for (const comment of ['# before all', '# soft', '# first', '# last']) expect(more).toContain(comment);
  const none = withExercises(TEXT, home.section, [], home.index);
  expect(patterns(none)).toEqual([['x . . .'], [], ['x x x .']]);
});

it('[ST190] moves an exercise within its section and into the next', () => {
  const lesson = read(TEXT);
  expect(patterns(withMoved(TEXT, lesson, 1, 2))).toEqual([['x . . .'], ['. . x x', 'x x . .'], ['x x x .']]);
  // Down past the last of a section it becomes the second of the next, up past the first the last but one before.
  expect(patterns(withMoved(TEXT, lesson, 2, 3))).toEqual([['x . . .'], ['x x . .'], ['x x x .', '. . x x']]);
  expect(patterns(withMoved(TEXT, lesson, 3, 2))).toEqual([
    ['x . . .'],
    ['x x . .', 'x x x .', '. . x x'],
    [],
  ]);
  expect(patterns(withMoved(TEXT, lesson, 0, 1))).toEqual([['x x . .', 'x . . .', '. . x x'], ['x x x .']]);
});

it('[ST190] mirrors hands in every section', () => {
  const left = read(setSetUp(TEXT, read(TEXT), 'left-handed', NONE_IN_USE));
  expect(left.exercises.map((each) => each.sticking)).toEqual([null, null, ['L', 'R'], null]);
  expect(sectionsOf(left).map(({ exercises }) => exercises.length)).toEqual([1, 2, 1]);
});

it('[ST190] copies what is set for a student into its sections', () => {
  const lesson = read(TEXT);
  const set = ['snare x x x .', 'snare x x . .'].map((exercise) => {
    return { lesson: 'a', exercise, pinned: false, note: 'slowly', toBpm: null, by: null };
  });
  const own = ownLesson({ id: 'a', lesson, text: TEXT }, [{ id: 'a', lesson }], set, 'For Bram') ?? '';
  expect(patterns(own)).toEqual([['x x . .'], ['x x x .']]);
  expect(read(own).exercises.map((each) => each.notes)).toEqual(['slowly', 'slowly']);
  expect(read(own).title).toBe('For Bram');
});

it('[ST3501] what a section names to come first follows its heading, and goes where it no longer stands above', () => {
  const text = `title: T
sections:
  - heading: Clap # first
    comping: clap
    exercises: [x x x x]
  - heading: Time
    before: clap # needed
    exercises: [x . . .]
`;
  const befores = (of: string) => sectionsOf(read(of)).map(({ heading, before }) => [heading, before]);
  const renamed = setSection(text, 0, 'heading', 'Count and clap');
  expect(befores(renamed)).toEqual([
    ['Count and clap', undefined],
    ['Time', 'Count and clap'],
  ]);
  for (const comment of ['# first', '# needed']) expect(renamed).toContain(comment);
  const alone = [
    ['Time', undefined],
    ['Clap', undefined],
  ];
  expect(befores(moveSection(text, 0, 1))).toEqual(alone);
  expect(befores(moveSection(text, 1, -1))).toEqual(alone);
  expect(befores(removeSection(text, 0))).toEqual([['Time', undefined]]);
  expect(befores(setSection(text, 0, 'heading', ''))).toEqual([
    [null, undefined],
    ['Time', undefined],
  ]);
  expect(setSection(text, 1, 'heading', 'Ride')).toBe(text.replace('heading: Time', 'heading: Ride'));
});
