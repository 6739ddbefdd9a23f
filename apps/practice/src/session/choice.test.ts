import { parseLesson, sectionsOf } from '@shedbook/core';
import { expect, it } from 'vitest';
import {
  exampleChoice,
  firstChoice,
  formNames,
  formOf,
  hasMoreLimbs,
  mostLayers,
  padChoice,
} from './choice.ts';

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

it('[ST2902] an example is heard whole, with nothing counted; where there is none the loop plays', () => {
  const { lesson } = parseLesson(
    'title: T\nexercises: [{pattern: x . . ., example: 2}, . x . .]\n',
    'first.lesson.yaml',
  );
  if (!lesson) throw new Error('the lesson has problems');
  const chosen = { ...firstChoice(lesson), form: 'example', layers: 1, mine: ['other hand'] as const };
  expect(exampleChoice(lesson, 1, chosen)).toMatchObject({
    form: 'example',
    layers: 4,
    mine: [],
    ladder: false,
  });
  expect(exampleChoice(lesson, 2, chosen)).toEqual({ ...chosen, form: 'loop' });
  expect(formOf(lesson, 'example', 1).sections[0]?.bars).toBe(2);
  expect([formNames(lesson, 1)[0], formNames(lesson, 2).includes('example')]).toEqual(['example', false]);
});

it('[ST3500] what is clapped is heard as on one surface; the page claps where the form leaves no bars to the student', () => {
  const { lesson } = parseLesson(
    `title: T
sections:
  - heading: Clap
    groove: {}
    comping: clap
    exercises: [x x x x]
    forms: {loop: {sections: [{pattern: 1, click: all}, {rest: 1, click: none}]}, mine: {sections: [{pattern: 1}]}}
  - exercises: [x . . .]
`,
    'first.lesson.yaml',
  );
  if (!lesson) throw new Error('the lesson has problems');
  const chosen = firstChoice(lesson);
  expect(padChoice(lesson, 1, chosen)).toMatchObject({ surface: 'pad', mine: [] });
  expect(padChoice(lesson, 1, { ...chosen, form: 'mine' })).toMatchObject({ mine: ['lead hand'] });
  expect(padChoice(lesson, 2, chosen)).toEqual(chosen);
});

it('[ST4207] every limb is offered where the groove has more than the exercise', () => {
  const text = `title: x
groove: {ride: x x x x}
sections:
  - heading: Clap
    groove: {}
    exercises: [{pattern: {clap: x x x x}}]
  - heading: Play
    exercises: [x x x x, {pattern: {ride: x x x x}}]
`;
  const { lesson } = parseLesson(text, 'x');
  expect(lesson && [1, 2, 3].map((exercise) => hasMoreLimbs(lesson, exercise))).toEqual([false, true, false]);
});
