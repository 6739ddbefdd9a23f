import { expect, it } from 'vitest';
import { problemsOf, read } from '../../test/reading.ts';
import { perform } from '../groove/perform.ts';
import { handsOf, handsTogether } from '../lesson/hands.ts';
import { exerciseKey } from '../lesson/identity.ts';
import type { Exercise } from '../lesson/lesson.ts';
import { changeLesson } from './change-lesson.ts';
import { printLesson } from './print.ts';

const TEXT = `title: Hands
feel: triplet
groove: {hihat-foot: . x . x}
exercises:
  - {pattern: {snare: x.x . x .., tom-high: ..x x ... x.x}, sticking: {snare: R L R, tom-high: R L R L}}
  - {pattern: {snare: x . . ., tom-low: x . x .}, sticking: {tom-low: R B}}
  - {pattern: {snare: x . x ., tom-low: . x . x}, sticking: R L}
`;

const handsIn = (exercise: Exercise | undefined) =>
  exercise?.parts.map((_, part) => handsOf(exercise, part)?.join('') ?? null);

it('[LE2102] hands of any voice are read, printed, kept in another meter and told to each stroke', () => {
  const lesson = read(TEXT);
  expect(problemsOf(TEXT)).toEqual([]);
  expect(lesson.exercises.map(handsIn)).toEqual([
    ['RLR', 'RLRL'],
    [null, 'RB'],
    ['RL', null],
  ]);
  expect(read(printLesson(lesson)).exercises).toEqual(lesson.exercises);
  expect(printLesson(lesson)).toContain('tom-high: R L R L');
  const form = lesson.forms.find(({ name }) => name === 'loop');
  if (!form) throw new Error('no loop');
  const struck = perform(lesson, { exercise: 1, form }).strokes.filter(
    ({ voice, written }) => voice === 'tom-high' && written.bar === 1,
  );
  // definition: right-handed, the lead hand is the right one
  expect(struck.map(({ sticking, limb }) => `${sticking} ${limb}`)).toEqual([
    'R lead hand',
    'L other hand',
    'R lead hand',
    'L other hand',
  ]);
  const inThree = read(changeLesson(TEXT, { section: null, meter: '3/4' }).text);
  expect(handsIn(inThree.exercises[0])).toEqual(['RLR', 'RL']);
});

it('[LE2102] other hands make another exercise; hands that do not fit are refused at their place', () => {
  const keysOf = (text: string) => read(text).exercises.map(exerciseKey);
  expect(keysOf(TEXT)[0]).toBe('snare x.x . x ..; tom-high ..x x ... x.x (RLRL) (RLR)');
  expect(keysOf(TEXT.replace('R L R L}}', 'L R L R}}'))[0]).not.toBe(keysOf(TEXT)[0]);
  const wrong = TEXT.replace('tom-high: R L R L', 'tom-high: R L R').replace('{tom-low: R B}', '{ride: R}');
  expect(problemsOf(wrong)).toEqual([
    expect.stringMatching(
      /^5:\d+: error: exercises\[1\]\.sticking\.tom-high: found 3 hands, expected 4, one for each stroke/,
    ),
    expect.stringMatching(
      /^6:\d+: error: exercises\[2\]\.sticking\.ride: found "ride", expected one of snare, tom-low/,
    ),
  ]);
});

it('[LE2102] hands that strike together are both; those under which the pattern was changed are none', () => {
  expect([handsTogether(['R', 'L']), handsTogether(['L', 'L']), handsTogether([])]).toEqual(['B', 'L', null]);
  const [exercise] = read(TEXT).exercises as [Exercise];
  const [first, second] = exercise.parts as [Exercise['parts'][0], Exercise['parts'][0]];
  expect(handsIn({ ...exercise, parts: [second, { ...second, pattern: first.pattern }] })).toEqual([
    'RLRL',
    null,
  ]);
});
