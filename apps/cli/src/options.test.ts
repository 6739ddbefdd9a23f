import { exerciseLabel, type Lesson, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { LABELS_ANEW, NUMBERED_ANEW } from '../../../internal/testing/numbered-anew.ts';
import { readExerciseList } from './options.ts';

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
