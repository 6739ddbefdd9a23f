import { type Lesson, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { changeExercise, type InUse, withExercises } from './exercises.ts';

const TEXT = `title: T
exercises:
  - pattern: x . . . | . x . . | . . x . | . . . x
    repeats: {bars: 1-2, endings: [3, 4]}
    above: a | b | c | d
    fill: {bar: 4}
`;

it('[ST902] an exercise that becomes shorter, also by its text, names no bar that is gone', () => {
  const { lesson, problems } = parseLesson(TEXT, 'test');
  expect(problems).toEqual([]);
  const [exercise] = (lesson as Lesson).exercises;
  const parts = exercise!.parts.map((part) => ({
    ...part,
    pattern: { bars: part.pattern.bars.slice(0, 2) },
  }));
  const shorter = changeExercise(lesson!.exercises, 0, { parts }, { exercises: [] } as unknown as InUse);
  const text = withExercises(TEXT, lesson as Lesson, shorter);
  const after = parseLesson(text, 'test');
  // definition: two bars, so that neither the endings nor what stood over bars 3 and 4 has a place
  expect(after.problems).toEqual([]);
  expect(after.lesson?.exercises[0]).toMatchObject({ above: ['a', 'b'] });
  expect(after.lesson?.exercises[0]?.repeats).toBeUndefined();
});
