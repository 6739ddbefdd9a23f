import { exerciseKey, type Lesson, type LoopRecord, parseLesson, Seconds } from '@shedbook/core';
import { expect, it } from 'vitest';
import { loops, NOW, TODAY } from '../../test/students.ts';
import { addEntry, EMPTY_LOG } from '../log/merge.ts';
import { formatDay } from '../time/moment.ts';
import { planPractice } from './plan.ts';
import type { Assignment, PlanTask } from './plan-item.ts';

const lesson = parseLesson(
  `title: First swing
tempo: {start: 72, goal: 120}
sections:
  - heading: Clap
    groove: {}
    comping: clap
    exercises: [x x x x, x.x x.x x.x x.x]
  - heading: Time
    before: Clap
    exercises: [x.. ... x.. ..., ..x ... ..x ...]
  - heading: Feet
    before: Time
    exercises: [x.. x.. ... ...]
`,
  'x.lesson.yaml',
).lesson as Lesson;
const shelf = [{ id: 'first-swing', lesson }];

function keyOf(number: number): string {
  const exercise = lesson.exercises.find((each) => each.number === number);
  if (!exercise) throw new Error(`no exercise ${number}`);
  return exerciseKey(exercise);
}

function played(number: number, records: readonly LoopRecord[]) {
  return {
    id: `phone ${number}`,
    device: 'phone',
    startedAt: `${formatDay(TODAY - 1)}T10:00:00Z`,
    durationSeconds: Seconds(300),
    lesson: 'first-swing',
    exercise: keyOf(number),
    form: 'loop',
    heardBy: 'ear' as const,
    loops: records,
  };
}

function set(number: number): Assignment {
  return { lesson: 'first-swing', exercise: keyOf(number), pinned: false, note: null };
}

function itemsOf(changes: Partial<PlanTask>) {
  const task = { shelf, log: EMPTY_LOG, now: NOW, minutes: 30, assignments: [], seed: 1, ...changes };
  return planPractice(task).items.filter(({ number }) => number !== null);
}

function logOf(...entries: readonly ReturnType<typeof played>[]) {
  return entries.reduce(addEntry, EMPTY_LOG);
}

const CLAPS = { fact: 'comes-first', before: 'Time' };

it('[CH3500] what a section stands on comes first, and nothing of that section before', () => {
  const items = itemsOf({});
  expect(items.slice(0, 2).map(({ number, reason, minutes }) => [number, reason, minutes])).toEqual([
    [1, CLAPS, 2],
    [2, CLAPS, 2],
  ]);
  expect(items.every(({ number }) => Number(number) <= 2)).toBe(true);
  // Five minutes are one of warm-up and two visits: half of the rest only where there is something else to play.
  const numbers = (changes: Partial<PlanTask>) =>
    itemsOf({ minutes: 5, ...changes }).map(({ number }) => number);
  expect(numbers({})).toEqual([1, 2]);
  expect(numbers({ assignments: [set(4)] })).toEqual([1, 4]);
});

it('[CH3500] it comes before what the teacher set, and what was set stays', () => {
  const items = itemsOf({ assignments: [set(5), set(1)] });
  // Feet stands on Time, and that on Clap; the one that is set itself stays where the teacher put it
  expect(items.slice(0, 3).map(({ number, reason }) => [number, reason])).toEqual([
    [2, { fact: 'comes-first', before: 'Feet' }],
    [5, { fact: 'teacher-set' }],
    [1, { fact: 'teacher-set' }],
  ]);
  expect(itemsOf({ assignments: [set(3)], isSilent: true }).map(({ number }) => number)).toEqual([3]);
});

it('[CH3500] it is had once it was clean at the start, and whoever plays the section is past it', () => {
  const slow = itemsOf({ log: logOf(played(1, loops(9, 60)), played(2, loops(9, 72))) });
  expect(slow[0]).toMatchObject({ number: 1, kind: 'review', reason: CLAPS });
  expect(slow.some(({ number }) => number === 3)).toBe(false);
  const had = itemsOf({ log: logOf(played(1, loops(9, 72)), played(2, loops(9, 80))) });
  expect(had.map(({ number }) => number)).toContain(3);
  expect(had.some(({ reason }) => reason.fact === 'comes-first')).toBe(false);
  const past = itemsOf({ log: logOf(played(3, loops(9, 96))) });
  expect(past.some(({ reason }) => reason.fact === 'comes-first')).toBe(false);
});
