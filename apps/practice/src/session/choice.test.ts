import { parseLesson, sectionsOf } from '@shedbook/core';
import { expect, it } from 'vitest';
import { firstChoice, formOf, mostLayers } from './choice.ts';

it('[LE15] begins with the loop of the lesson, as a build and a pack record it', () => {
  const forms = 'forms: {Warm up: {sections: [{time: 2}]}, Loop: {sections: [{pattern: 2}]}}';
  const { lesson } = parseLesson(`title: First swing\n${forms}\n`, 'first.lesson.yaml');
  if (!lesson) throw new Error('the lesson has problems');
  expect(firstChoice(lesson).form).toBe('Loop');
  // definition: a name that the lesson has not is that of an older version of it: the loop plays
  expect(formOf(lesson, 'gone')).toMatchObject({ name: 'Loop', sections: [{ bars: 2 }] });
});

it('[ST191] counts the layers of the section that has most', () => {
  const sections = 'sections: [{groove: {ride: x x x x}}, {heading: All}]';
  const { lesson } = parseLesson(`title: First swing\n${sections}\n`, 'first.lesson.yaml');
  if (!lesson) throw new Error('the lesson has problems');
  // definition: a layer for each voice of the groove and one for the exercise; the default groove has three voices
  expect(sectionsOf(lesson).map(({ layers }) => layers.length)).toEqual([2, 4]);
  expect([mostLayers(lesson), firstChoice(lesson).layers]).toEqual([4, 4]);
});
