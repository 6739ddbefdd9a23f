import { expect, it } from 'vitest';
import { parseLesson } from '../document/parse.ts';
import { printLesson } from '../document/print.ts';
import type { Lesson } from '../lesson/lesson.ts';
import { perform } from './perform.ts';
import { hasOnset } from './stroke.ts';

const TEXT = `title: A slow one
playedWith: brushes
groove: {hihat-foot: . x . x}
exercises: [w x.x W b]
sections:
  - heading: The same with sticks
    playedWith: sticks
    exercises: [x . s r]
`;

function read(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'slow.lesson.yaml');
  expect(problems).toEqual([]);
  return lesson as Lesson;
}

const once = {
  name: 'once',
  sections: [{ play: 'pattern', bars: 1, ending: null }],
  repeat: 1,
  countInBars: 0,
} as const;

/** How each stroke of the hands in an exercise is struck. */
const struck = (lesson: Lesson, exercise: number) =>
  perform(lesson, { exercise, form: once })
    .strokes.filter(({ limb }) => limb?.endsWith('hand'))
    .map(({ voice, articulation }) => `${voice} ${articulation}`);

it('[LE1400] with brushes plain strokes on the snare are taps, w sweeps; a section may take sticks again', () => {
  const lesson = read(TEXT);
  expect(struck(lesson, 1)).toEqual(['snare sweep', 'snare tap', 'snare tap', 'snare sweep', 'snare buzz']);
  expect(struck(lesson, 2)).toEqual(['snare normal', 'sidestick normal', 'rimshot normal']);
  expect(read(printLesson(lesson))).toEqual(lesson);
});

it('[LE1400] what is neither sticks nor brushes is refused, and sticks need not be written', () => {
  const { problems } = parseLesson('title: A\nplayedWith: brush\n', 'a.lesson.yaml');
  expect(problems.map(({ line, column, severity }) => [line, column, severity])).toEqual([[2, 13, 'error']]);
  const plain = read('title: A\nexercises: [x x x x]\n');
  expect([plain.playedWith, printLesson(plain).includes('playedWith')]).toEqual(['sticks', false]);
});

it('[LE1400] a sweep begins at no moment that could be heard', () => {
  const { strokes } = perform(read(TEXT), { exercise: 1, form: once });
  const silent = strokes.filter((stroke) => !hasOnset(stroke)).map(({ mark }) => mark);
  expect(silent).toEqual(['w', 'W']);
});

it('[LE3100] with brushes four bars end on snare and crash, since no stick hits a rim', () => {
  const endingOf = (text: string) => {
    const { lesson } = parseLesson(text, 'a.lesson.yaml');
    return lesson?.forms.find(({ name }) => name === 'four and two')?.sections[0]?.ending?.voices;
  };
  // common practice: a rim shot is the shaft of a stick on the rim
  expect(endingOf('title: A\nplayedWith: brushes\n')).toEqual(['snare', 'crash']);
  expect(endingOf('title: A\n')).toEqual(['rimshot', 'crash']);
});
