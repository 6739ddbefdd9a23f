import { type Exercise, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { heardOf } from '../hear/heard.ts';
import { AS_WRITTEN } from '../hear/sound-choice.ts';
import { withExercises } from './exercises.ts';
import { withExample } from './said.ts';

function read(text: string) {
  const { lesson } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error(text);
  return lesson;
}

it('[ST2903] an exercise becomes an example and no longer is one, and is heard as it is shown', () => {
  const text = 'title: T\nexercises:\n  - x . . . # first\n  - . x . .\n';
  const lesson = read(text);
  const [first, second] = lesson.exercises as readonly [Exercise, Exercise];
  const marked = withExercises(text, lesson, [withExample(first, { times: 2, form: 'loop' }), second]);
  expect(marked).toContain('example:\n      times: 2\n      form: loop\n');
  expect(marked).toContain('# first');
  const choice = { ...AS_WRITTEN, exercise: 1 };
  // definition: twice round, then the loop of four bars
  expect(heardOf(read(marked), choice).form.sections.map(({ bars }) => bars)).toEqual([2, 4]);
  expect(heardOf(read(marked), { ...choice, form: 'loop' }).form.sections.map(({ bars }) => bars)).toEqual([
    4,
  ]);
  expect(heardOf(read(marked), { ...choice, exercise: 2 }).form.name).toBe('loop');
  const back = read(marked).exercises[0] as Exercise;
  const unmarked = withExercises(marked, read(marked), [withExample(back, null), second]);
  expect(read(unmarked).exercises).toEqual(lesson.exercises);
  expect(unmarked).toContain('# first');
});
