import { parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { firstChoice, formOf } from './choice.ts';

it('[LE15] begins with the loop of the lesson, as a build and a pack record it', () => {
  const forms = 'forms: {Warm up: {sections: [{time: 2}]}, Loop: {sections: [{pattern: 2}]}}';
  const { lesson } = parseLesson(`title: First swing\n${forms}\n`, 'first.lesson.yaml');
  if (!lesson) throw new Error('the lesson has problems');
  expect(firstChoice(lesson).form).toBe('Loop');
  // definition: a name that the lesson has not is that of an older version of it: the loop plays
  expect(formOf(lesson, 'gone')).toMatchObject({ name: 'Loop', sections: [{ bars: 2 }] });
});
