/** While a roll or a sweep is held nothing of a hand is a stroke too many, and no held place is a stroke to be found. */
import { Bpm, type Form, meter, parseLesson, type Voice } from '@shedbook/core';
import { expect, it } from 'vitest';
import { askedGrid } from '../align/asked-grid.ts';
import type { PlacedBar } from '../align/bars.ts';
import { withoutDrawn } from './drawn.ts';
import type { HeardDecision } from './strokes.ts';

const FORM: Form = {
  name: 'once',
  sections: [{ play: 'pattern', bars: 2, ending: null }],
  repeat: 1,
  countInBars: 0,
};

const gridOf = (pattern: string) => {
  const { lesson } = parseLesson(
    `title: T\nfeel: even\ngroove: {}\nexercises: ["${pattern}"]\n`,
    'a.lesson.yaml',
  );
  if (!lesson) throw new Error(pattern);
  return askedGrid({ lesson, exercise: 1, form: FORM, bpm: Bpm(60) });
};

/** Two bars of four seconds each. */
const BARS = [0, 1].map(
  (formBar) => ({ formBar, startSeconds: 4 * formBar, barSeconds: meter('4/4').beats.length }) as PlacedBar,
);

/** What is left of strokes that are written nowhere, at some seconds. */
const left = (pattern: string, seconds: readonly number[], voice: Voice = 'snare') => {
  const strokes = seconds.map((timeSeconds) => ({ place: null, voice, timeSeconds }));
  const decision = { strokes } as unknown as HeardDecision;
  return withoutDrawn(decision, gridOf(pattern), BARS).strokes.map(({ timeSeconds }) => timeSeconds);
};

it('[LI7600] the bounces of a roll that is held, over its bar line too, are no strokes too many', () => {
  // definition: at 60 in 4/4 the third beat begins at 2 s, the sixth ends at 6 s
  expect(left('x . b ~ | ~ ~ x .', [1, 2.03, 3.5, 4.2, 5.9, 6.5])).toEqual([1, 6.5]);
  expect(left('x . b . | . . x .', [1, 2.03, 3.5, 4.2, 5.9, 6.5])).toEqual([1, 2.03, 3.5, 4.2, 5.9, 6.5]);
  // A foot does not roll.
  expect(left('x . b ~ | ~ ~ x .', [3.5], 'bass')).toEqual([3.5]);
});

it('[LI7600] of what is held its beginning alone is asked for', () => {
  expect(gridOf('x . b ~ | ~ ~ x .').bars.map(({ strokes }) => strokes.length)).toEqual([2, 1]);
});
