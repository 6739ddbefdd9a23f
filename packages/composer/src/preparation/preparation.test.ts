import {
  type Lesson,
  parseLesson,
  patternsName,
  STARTER_NAMES,
  sectionBefore,
  sectionsOf,
  starterText,
} from '@shedbook/core';
import { expect, it } from 'vitest';
import { withPreparation } from './preparation-text.ts';
import { preparationSteps } from './steps.ts';

const say = (fact: { readonly fact: string; readonly heading?: string }) =>
  fact.heading === undefined ? fact.fact : `${fact.fact} ${fact.heading}`;

function read(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'x.lesson.yaml');
  if (!lesson || problems.length > 0) throw new Error(JSON.stringify(problems));
  return lesson;
}

function barsOf(more: string): readonly string[] {
  const lesson = read(`title: T\n${more}\n`);
  return preparationSteps(lesson).map(
    ({ pattern }) => pattern.bars[0]?.map(({ text }) => text).join(' ') ?? '',
  );
}

it('[CO3500] a preparation is made from meter and feel: the beat, all of it, first and last, last, middle', () => {
  // common practice: swung eighths are felt in three, 12/8 too; straight eighths in two; funk of sixteenths in four
  expect(barsOf('feel: triplet')).toEqual([
    'x x x x',
    'xxx xxx xxx xxx',
    'x.x x.x x.x x.x',
    '..x ..x ..x ..x',
    '.x. .x. .x. .x.',
  ]);
  expect(barsOf('meter: 3/4\ngroove: {hihat: xx xx xx}')).toEqual(['x x x', 'xx xx xx', '.x .x .x']);
  expect(barsOf('groove: {hihat: xxxx xxxx xxxx xxxx, snare: . x . x}\nvocabulary: [x..x, ..x.]')[2]).toBe(
    'x..x x..x x..x x..x',
  );
  expect(barsOf('meter: 12/8')[1]).toBe('xxx xxx xxx xxx');
  expect(barsOf('feel: 1.5:1 sixteenths')[1]).toBe('xxxx xxxx xxxx xxxx');
  // definition: 2+2+3/8 has two beats of two eighths and one of three
  expect(barsOf('meter: 2+2+3/8\ngroove: {hihat: xx xx xxx}')).toEqual([
    'x x x',
    'xx xx xxx',
    'xx xx x.x',
    '.x .x ..x',
    '.x .x .x.',
  ]);
});

it('[CO3501] a preparation is written before its section, which names it; what was written stays', () => {
  const text = `title: T # mine
tempo: 80
feel: triplet
exercises:
  # the first
  - x.. ..x x.x ...
sections:
  - heading: Time # two
    meter: 6/8
    exercises: [x.. ..x]
`;
  const once = withPreparation(text, read(text), 1, say);
  const both = withPreparation(once, read(once), 0, say);
  const lesson = read(both);
  expect(lesson.sections.map(({ heading, before, meter }) => [heading, before, meter.text])).toEqual([
    ['preparation', undefined, '4/4'],
    [null, 'preparation', '4/4'],
    ['preparation-of Time', undefined, '6/8'],
    ['Time', 'preparation-of Time', '6/8'],
  ]);
  for (const kept of ['title: T # mine', '# the first', 'heading: Time # two']) expect(both).toContain(kept);
  const own = (of: Lesson) => of.exercises.map(patternsName).filter((name) => !name.startsWith('clap'));
  expect(own(lesson)).toEqual(own(read(text)));
  const [first] = sectionsOf(lesson);
  expect(first).toMatchObject({ groove: [], comping: 'clap' });
  expect(first?.forms[0]?.sections.map(({ play, click }) => [play, click?.join(' ')])).toEqual([
    ['pattern', '1 2 3 4'],
    ['rest', '1 2 3 4'],
    ['rest', '2 4'],
    ['rest', '1'],
    ['rest', ''],
  ]);
  // The same heading again is told apart.
  const again = text.replace('heading: Time # two', 'heading: preparation');
  expect(read(withPreparation(again, read(again), 0, say)).sections[0]?.heading).toBe('preparation (2)');
});

it('[CO3501] every starting groove can be prepared for, and every preparation plays', () => {
  for (const name of STARTER_NAMES) {
    const whole = starterText(name, 'T');
    const lesson = read(whole);
    const after = read(withPreparation(whole, lesson, 0, say));
    const section = sectionsOf(after)[1];
    expect(section && sectionBefore(after, section)?.exercises.length).toBeGreaterThan(2);
  }
});
