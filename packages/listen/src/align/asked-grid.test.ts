import { type Lesson, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { askedGrid } from './asked-grid.ts';

const lesson = parseLesson(
  'title: A slow one\nplayedWith: brushes\ngroove: {hihat-foot: . x . x}\nexercises: [w.. w.x w.. ..x]\n',
  'slow.lesson.yaml',
).lesson as Lesson;
const form = {
  name: 'once',
  sections: [{ play: 'pattern', bars: 1, ending: null }],
  repeat: 1,
  countInBars: 0,
} as const;

it('[LI1400] asks for the taps of a brush and not for its sweeps', () => {
  const { bars } = askedGrid({ lesson, form, exercise: 1 });
  const strokes = bars.flatMap((bar) => bar.strokes);
  // definition: the last triplets of 2 and 4 are taps
  expect(strokes.filter(({ voice }) => voice === 'snare')).toHaveLength(2);
  // definition: sweeps on 1, 2 and 3 of four
  expect(bars.map(({ drawn }) => drawn)).toEqual([[0, 0.25, 0.5]]);
});
