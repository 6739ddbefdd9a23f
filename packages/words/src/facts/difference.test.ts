import { compare } from '@shedbook/composer';
import { type Exercise, type Lesson, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { ENGLISH } from '../english/english.ts';
import { GERMAN } from '../german/german.ts';
import { say } from './say.ts';

it('[WO1] why one bar is harder than another is said with its places and points', () => {
  const { lesson } = parseLesson(
    'title: a\nfeel: triplet\nexercises: [x.. x.. ... ..., x.. x.. ..x ...]\n',
    'lesson',
  ) as { lesson: Lesson };
  const [first, second] = lesson.exercises as readonly [Exercise, Exercise];
  const said = (from: Exercise, to: Exercise) =>
    [ENGLISH, GERMAN].map((language) => say(compare(lesson, from, to).fact, language));
  // definition: a beat hung over weighs 4 · 0.4, a stroke alone 1, two changes of company 0.3
  expect(said(first, second)).toEqual([
    '2 is harder than 1 because it says less of the pulse (+1.6), one more stroke falls alone (the let of 3) (+1.0) and it changes company more often (+0.3).',
    '2 ist schwerer als 1: der Puls ist weniger zu hören (+1,6), ein Schlag mehr fällt allein (auf dem „ole“ der 3) (+1,0) und die Begleitung wechselt öfter (+0,3).',
  ]);
  expect(said(second, first)[0]).toContain('1 is easier than 2 because it says more of the pulse (−1.6)');
  expect(said(first, first)).toEqual([
    '1 is as hard as 1: 0.0 apart.',
    '1 ist so schwer wie 1: Unterschied 0,0.',
  ]);
});
