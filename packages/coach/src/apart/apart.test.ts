import { formatPattern, handsOf } from '@shedbook/core';
import { expect, it } from 'vitest';
import { lessonOf, swing } from '../../../../internal/testing/loops.ts';
import { logOf, loops, TODAY } from '../../test/students.ts';
import { addEntry } from '../log/merge.ts';
import { standExercises } from '../mastery/exercises.ts';
import { busiestBeat, isPart, type PartKind, takeApart } from './apart.ts';

const { lesson } = swing;

function patternOf(number: number, kind: PartKind, beat: number): string | undefined {
  const part = takeApart(lesson, number, { kind, beat }).exercises[number - 1];
  return part?.parts.map(({ pattern }) => formatPattern(pattern)).join();
}

it('[CH42] a cell alone comes on every beat, a move alone on every two, of the exercise and of no other', () => {
  // definition: exercise 4 is "x.. ..x ... ..x"
  expect(patternOf(4, 'cell alone', 2)).toBe('..x ..x ..x ..x');
  expect(patternOf(4, 'move alone', 2)).toBe('x.. ..x x.. ..x');
  // definition: the move into beat 1 comes from beat 4
  expect(patternOf(4, 'move alone', 1)).toBe('..x x.. ..x x..');
  const parts = takeApart(lesson, 4, { kind: 'cell alone', beat: 2 }).exercises;
  expect(parts.filter((_, i) => i !== 3)).toEqual(lesson.exercises.filter((_, i) => i !== 3));
});

it('[CH42] a beat that rests has no cell to play: the fullest beat stands for it', () => {
  expect(patternOf(4, 'cell alone', 3)).toBe('x.. x.. x.. x..');
  const two = lessonOf('title: T\nmeter: 2/4\nfeel: triplet\nexercises: ["x.. x.x | ... xxx"]\n');
  expect(busiestBeat(two.exercises[0] as (typeof two.exercises)[number])).toBe(2);
});

it('[CH42] two limbs are the lead hand and the exercise; slower and sung are the whole', () => {
  const two = takeApart(lesson, 1, { kind: 'two limbs', beat: 1 });
  expect(two.groove.map(({ voice }) => voice)).toEqual(['ride']);
  expect(two.exercises).toEqual(lesson.exercises);
  for (const kind of ['slower', 'sung'] as const)
    expect(takeApart(lesson, 1, { kind, beat: 1 })).toBe(lesson);
  expect(['slower', 'cell alone', 'sung', 'loop'].map(isPart)).toEqual([false, true, true, false]);
});

it('[CH42] a part that was played tells nothing of the whole', () => {
  const log = logOf({ number: 1, daysAgo: 2, loops: loops(6, 80) });
  const [entry] = log.entries;
  if (!entry) throw new Error('one entry');
  const part = { ...entry, id: 'part', form: 'cell alone', loops: loops(6, 140) };
  expect(standExercises([swing], addEntry(log, part), TODAY)[0]?.cleanBpm).toBe(80);
});

it('[CH2900] hands go with their strokes, and what is said there is said of the part', () => {
  const said = lessonOf(
    'title: T\nexercises:\n' +
      '  - {pattern: {snare: x . . . | . xx . ., tom-high: . x . . | . x . .}, sticking: {snare: R L R, tom-high: L L}, ' +
      'repeats: 1-2, dynamics: p < | . . f, above: a | b, fill: {bar: 2, beat: 1}}\n',
  );
  const [part] = takeApart(said, 1, { kind: 'move alone', beat: 2 }).exercises;
  if (!part) throw new Error('one');
  // definition: the move from a silent 1 into 2, twice in a bar of four; bar 2 has the snare's L R there
  expect(part.parts.map(({ pattern }) => formatPattern(pattern))).toEqual(['. xx . xx', '. x . x']);
  expect(part.parts.map((_, i) => handsOf(part, i)?.join(''))).toEqual(['LRLR', 'LL']);
  expect(part.dynamics).toEqual([{ bar: 0, beat: 0, mark: 'p', hairpin: null }]);
  expect([part.fill, part.repeats, part.above]).toEqual([
    { bar: 0, beat: 0, silences: null },
    undefined,
    undefined,
  ]);
});
