import { expect, it } from 'vitest';
import { parseLesson } from '../document/parse.ts';
import { styleOf } from './style.ts';

it.each([
  // common practice: what teachers file these under
  ['feel: triplet\nexercises: [x.. ... ..x ...]', 'swing'],
  ['exercises: [xxx ... x.. ...]', 'swing'],
  ['meter: 3/4\nfeel: triplet\nexercises: [x.. ... ..x]', 'waltz'],
  ['exercises: [x. .x x. ..]', 'eighths'],
  ['exercises: [x... ..x. .... x...]', 'sixteenths'],
  ['meter: 6/8\nexercises: [x.. ..x]', 'compound'],
  ['meter: 12/8\nexercises: [x.. ..x ... x..]', 'compound'],
])('[LE420] tells the style of a lesson: %s', (keys, style) => {
  const { lesson, problems } = parseLesson(`title: T\n${keys}\n`, 'lesson');
  if (!lesson) throw new Error(JSON.stringify(problems));
  expect(styleOf(lesson)).toBe(style);
});
