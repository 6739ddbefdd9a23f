import { type Lesson, parseLesson } from '@shedbook/core';
import { readMidi } from '@shedbook/exchange';
import { expect, it } from 'vitest';
import { NUMBERED_ANEW } from '../../../../internal/testing/numbered-anew.ts';
import { writeStandardFiles } from './standard-files.ts';

it('[SE3500] the MIDI file of an example plays it as it is shown, and nothing else is played longer', () => {
  const lesson = parseLesson(
    `title: Shown
forms: {tune: {sections: [{pattern: 2}, {time: 1}], countIn: 1}}
exercises:
  - {pattern: x x x x, example: 3}
  - x . x .
`,
    'shown',
  ).lesson as Lesson;
  const snares = (path: string, form?: Lesson['forms'][number]) => {
    const files = writeStandardFiles(lesson, form ? { playing: { form } } : {});
    const file = files.find((each) => each.path === path);
    const { notes } = readMidi(file?.content as Uint8Array);
    return notes.filter(({ voice }) => voice === 'snare').length;
  };
  // definition: three bars and two of the form, of four strokes each
  expect(snares('exercises/01.mid')).toBe(20);
  expect(snares('exercises/02.mid')).toBe(2);
  expect(snares('sheet.mid')).toBe(6);
  const loop = lesson.forms.find(({ name }) => name === 'loop');
  expect(loop && snares('exercises/01.mid', loop)).toBe(16);
});

it('[SE7005] files of exercises that are numbered anew have their letter, and sort as they stand on the page', () => {
  const lesson = parseLesson(NUMBERED_ANEW, 'anew').lesson as Lesson;
  const paths = writeStandardFiles(lesson, {}).flatMap(({ path }) => (path.endsWith('.mid') ? [path] : []));
  const numbers = ['A01', 'B01', 'B02', 'B03', 'C01'].map((number) => `exercises/${number}.mid`);
  expect(paths.filter((path) => path.startsWith('exercises/')).toSorted()).toEqual(numbers);
});
