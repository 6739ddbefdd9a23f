import { expect, it } from 'vitest';
import { parseLesson } from '../document/parse.ts';
import { printLesson } from '../document/print.ts';
import { perform } from '../groove/perform.ts';
import { EXAMPLE_FORM, exampleForm, formShown, formsShown } from './example.ts';
import { exerciseKey } from './identity.ts';
import type { Lesson } from './lesson.ts';

const TEXT = `title: Shown
tempo: 120
exercises:
  - {pattern: x . . . | . x . ., example: true}
  - {pattern: . x . ., example: 2}
  - {pattern: x x . . | . . x x | x . . x, repeats: {bars: 1, endings: [2, 3]}, example: {times: 3, form: Tune}}
  - x . x .
forms:
  short: {sections: [{pattern: 2}]}
  tune: {sections: [{pattern: 4}, {time: 4}], repeat: 2, countIn: 2}
`;

function read(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

const lesson = read(TEXT);
const bars = (number: number) =>
  exampleForm(lesson, number)?.sections.map((section) => `${section.play} ${section.bars}`);

it('[LE2902] an example goes round, then is shown in the form that is named, else in the first with several sections', () => {
  const tune = ['pattern 4', 'time 4', 'pattern 4', 'time 4'];
  // definition: four times round two bars; twice round one; three times round 1 2 1 3
  expect(bars(1)).toEqual(['pattern 8', ...tune]);
  expect(bars(2)).toEqual(['pattern 2', ...tune]);
  expect(bars(3)).toEqual(['pattern 12', ...tune]);
  expect([exampleForm(lesson, 4), exampleForm(lesson, null), exampleForm(lesson, 3)?.countInBars]).toEqual([
    null,
    null,
    2,
  ]);
  const form = exampleForm(lesson, 1);
  if (!form) throw new Error('an example');
  // definition: 24 bars of 4/4 at 120 quarters a minute after one bar of count-in, which tune has two of
  const { durationSeconds, countInSeconds } = perform(lesson, { exercise: 1, form });
  expect([durationSeconds - countInSeconds, countInSeconds]).toEqual([48, 4]);
});

it('[LE2902] it plays where no form is named, and can be chosen beside the others', () => {
  const shown = (number: number | null, name: string | null) => formShown(lesson, number, name).name;
  expect([shown(1, null), shown(4, null), shown(null, null)]).toEqual([EXAMPLE_FORM, 'loop', 'loop']);
  expect([shown(1, 'short'), shown(1, EXAMPLE_FORM), shown(4, EXAMPLE_FORM)]).toEqual([
    'short',
    EXAMPLE_FORM,
    'loop',
  ]);
  const names = (number: number) => formsShown(lesson, number).map(({ name }) => name);
  expect(names(1)).toEqual([EXAMPLE_FORM, ...names(4)]);
});

it('[LE2902] it is written as it is meant and makes no other exercise', () => {
  expect(read(printLesson(lesson)).exercises).toEqual(lesson.exercises);
  const printed = printLesson(lesson);
  expect(printed).toContain('example: true');
  expect(printed).toContain('example: 2');
  expect(printed).toContain('form: Tune');
  const plain = read(TEXT.replaceAll(/, example: (true|2|\{[^}]*\})/g, ''));
  expect(plain.exercises.map(({ example }) => example)).toEqual([undefined, undefined, undefined, undefined]);
  expect(plain.exercises.map(exerciseKey)).toEqual(lesson.exercises.map(exerciseKey));
});

it('[LE2902] a form that is not there is refused with its place and the nearest that is', () => {
  const { problems } = parseLesson(TEXT.replace('form: Tune', 'form: tunes'), 'lesson');
  expect(problems).toMatchObject([
    {
      code: 'example-form',
      path: 'exercises[3].example.form',
      line: 6,
      repair: { fact: 'did-you-mean', word: 'tune' },
    },
  ]);
  const wrong = (example: string) =>
    parseLesson(TEXT.replace('example: 2', `example: ${example}`), 'lesson').problems.map(({ path }) => path);
  expect(wrong('17')).toEqual(['exercises[2].example']);
  expect(wrong('{time: 3}')).toEqual(['exercises[2].example.time']);
});
