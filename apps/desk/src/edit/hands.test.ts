import { type Exercise, handsOf, type Lesson, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { withBar, withoutBar } from './bars.ts';
import { withLine } from './exercises.ts';
import { setSetUp } from './heading.ts';
import { setHand } from './strokes.ts';

/** Nothing refers to any exercise. */
const NONE_IN_USE = { exercises: [] };

const TEXT = `title: Hands
exercises:
  - pattern: {snare: x . x . | . . x ., tom-high: . x . x | x . . x}
    sticking: {snare: R L R, tom-high: L R L R}
`;

const lesson = parseLesson(TEXT, 'hands').lesson as Lesson;
const exercise = lesson.exercises[0] as Exercise;

const handsIn = (of: Omit<Exercise, 'number'>) =>
  of.parts.map((_, part) => handsOf(of, part)?.join('') ?? null);

it('[ST2102] hands are written for the voice that is being written, and stay with its strokes', () => {
  const pattern = exercise.parts[1]?.pattern ?? { bars: [] };
  const line = setHand({ pattern, sticking: handsOf(exercise, 1) }, { bar: 0, beat: 1, slot: 0 }, 'B');
  expect(handsIn(withLine(exercise, 1, line))).toEqual(['RLR', 'BRLR']);
  expect(handsIn(withBar(exercise, 0, 'same'))).toEqual(['RLRLR', 'LRLRLR']);
  expect(handsIn(withBar(exercise, 0, 'silent'))).toEqual(['RLR', 'LRLR']);
  expect(handsIn(withoutBar(exercise, 0))).toEqual(['R', 'LR']);
  const turned = parseLesson(setSetUp(TEXT, lesson, 'left-handed', NONE_IN_USE), 'hands').lesson
    ?.exercises[0];
  expect(turned && handsIn(turned)).toEqual(['LRL', 'RLRL']);
});
