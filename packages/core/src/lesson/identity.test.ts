import fc from 'fast-check';
import { expect, it } from 'vitest';
import { arbitraryDividedLesson } from '../../../../internal/testing/arbitrary-lesson.ts';
import { keptSample } from '../../../../internal/testing/kept-samples.ts';
import { problemsOf, read } from '../../test/reading.ts';
import { setExercises } from '../document/edit.ts';
import { printLesson } from '../document/print.ts';
import { sectionsOf } from '../lesson/section.ts';
import { exerciseKey, lessonKey } from './identity.ts';

const keys = (text: string) => read(text).exercises.map(exerciseKey);

it('[LE41] an exercise goes by its patterns until it has a name, so that old logs find it', () => {
  // definition: voice and pattern text, then the hands, as practice logs of version 1 have them
  expect(keys('title: T\nexercises: [x . x ., {pattern: x . x ., sticking: R L}]\n')).toEqual([
    'snare x . x .',
    'snare x . x . (RL)',
  ]);
  expect(keys('title: T\nexercises: [{pattern: x . x ., id: opener}]\n')).toEqual(['opener']);
  expect(keys(keptSample('lesson-1.lesson.yaml'))[0]).toMatch(/^snare /);
  expect(lessonKey(read('title: First swing, for Bram\n'))).toBe('first-swing-for-bram');
  expect(lessonKey(read('title: First swing, for Bram\nid: swing\n'))).toBe('swing');
});

const TWICE = `title: T
exercises: [x . . .]
sections:
  - exercises: [x . . ., x x . .]
  - groove: {ride: x x x x}
    exercises: [x . . ., x x . .]
  - groove: {ride: xx xx xx xx}
    exercises: [x . . .]
`;

it('[LE42] the same patterns over another groove are another exercise, over the same groove the same', () => {
  expect(keys(TWICE)).toEqual([
    'snare x . . .',
    'snare x . . .',
    'snare x x . .',
    'snare x . . . #2',
    'snare x x . . #2',
    'snare x . . . #3',
  ]);
  // A written name is taken before any other.
  expect(
    keys('title: T\nexercises: [{pattern: x . . ., id: snare . . . x}]\nsections: [{exercises: [. . . x]}]'),
  ).toEqual(['snare . . . x', 'snare . . . x #2']);
});

it('[LE42] no two exercises of a lesson that differ go by one name', () => {
  fc.assert(
    fc.property(arbitraryDividedLesson, (lesson) => {
      const found = new Map<string, string>();
      for (const section of sectionsOf(lesson)) {
        for (const exercise of section.exercises) {
          const played = JSON.stringify([section.meter, section.feel, section.groove, exercise.parts]);
          const before = found.get(exerciseKey(exercise));
          expect(before ?? played).toBe(played);
          found.set(exerciseKey(exercise), played);
        }
      }
    }),
    { numRuns: 100, seed: 31 },
  );
});

const COPIED = `title: For Bram
from: first-swing
exercises:
  - {pattern: x . . ., id: opener}
  - {pattern: x x . ., from: jazz-waltz}
  - {pattern: x x x ., from: jazz-waltz/snare . . x}
`;

it('[LE43] a copy says what it comes from', () => {
  const lesson = read(COPIED);
  expect(lesson.from).toBe('first-swing');
  expect(lesson.exercises.map(({ from }) => from)).toEqual([
    undefined,
    { lesson: 'jazz-waltz', exercise: 'snare x x . .' },
    { lesson: 'jazz-waltz', exercise: 'snare . . x' },
  ]);
  expect(read(printLesson(lesson))).toEqual(lesson);
  expect(problemsOf('title: T\nid: a/b\nexercises: [{pattern: x . . ., from: /b}]\n')).toEqual([
    expect.stringMatching(/^2:5.*without a slash/),
    expect.stringMatching(/^3:38.*first-swing\/opener/),
  ]);
  expect(
    problemsOf('title: T\nexercises: [{pattern: x . . ., id: a}, {pattern: . x . ., id: a}]\n')[0],
  ).toMatch(/each name once; it is exercise 1/);
});

it('[LE44] names stand in the text only where they are written', () => {
  const text = 'title: T\nexercises:\n  - x . . .\n  - {pattern: . x . ., id: b}\n';
  const { exercises } = read(text);
  const turned = setExercises(text, exercises.toReversed(), 'snare');
  expect(turned).not.toContain('from');
  expect(turned.match(/id:/g)).toHaveLength(1);
  expect(keys(turned)).toEqual(keys(text).toReversed());
});
