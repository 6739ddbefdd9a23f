import { exerciseLabel, type Lesson, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { LABELS_ANEW, NUMBERED_ANEW } from '../../../internal/testing/numbered-anew.ts';
import { readExerciseList } from './options.ts';
import { readPerformances } from './read-performances.ts';

const ANEW = parseLesson(NUMBERED_ANEW, 'anew').lesson as Lesson;

const asked = (text?: string) => readExerciseList('exercise', text, ANEW).map(exerciseLabel);

it('[CL7007] exercises are asked for as they are numbered on the page', () => {
  expect(asked()).toEqual(LABELS_ANEW);
  expect(asked('B3')).toEqual(['B3']);
  expect(asked('c1, b2,B2')).toEqual(['C1', 'B2']);
  expect(asked('A1-B2')).toEqual(['A1', 'B1', 'B2']);
  for (const text of ['1', 'B4', 'A1-B9', 'A2-B1', 'B2-B1', 'B1-B2-B3', '', 'B'])
    expect(() => asked(text), text).toThrow();
});

it('[CL7007] performances are named by the numbers on the page too', () => {
  const named = (performance: readonly string[], exercise?: string) =>
    readPerformances({ performance, ...(exercise === undefined ? {} : { exercise }) }, ANEW).map(
      ({ exercise: number, path }) => [exerciseLabel(number), path],
    );
  expect(named(['B2=both.mov', 'c1=feet = hard.mov'])).toEqual([
    ['B2', 'both.mov'],
    ['C1', 'feet = hard.mov'],
  ]);
  expect(named(['take=2.mov'], 'A1')).toEqual([['A1', 'take=2.mov']]);
  for (const text of ['D1=both.mov', '2=both.mov', 'both.mov']) expect(() => named([text]), text).toThrow();
});
