import { type Lesson, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { playedIn, shownOf, standingOf } from './kept-demonstrations.ts';

const TEXT = 'title: Two\nexercises:\n  - {pattern: x . x ., id: first}\n  - x x x x\n';

function lessonOf(text: string): Lesson {
  return parseLesson(text, 'lesson').lesson as Lesson;
}

it('[SE5401] a demonstration is that of its exercise wherever it stands, and of nothing that is played otherwise', () => {
  const [first, second] = [1, 2].map((number) => playedIn(lessonOf(TEXT), number));
  if (!first || !second) throw new Error('two exercises');
  const standing = (text: string, of = first) => standingOf(lessonOf(text), of);
  expect([standing(TEXT), standing(TEXT, second)]).toEqual([
    { number: 1, isShown: true },
    { number: 2, isShown: true },
  ]);
  expect(standing(TEXT.replace('exercises:', 'exercises:\n  - . x . x'))).toEqual({
    number: 2,
    isShown: true,
  });
  // definition: what is played is the pattern, its hands, and meter, feel and groove under it
  for (const other of [
    TEXT.replace('x . x .', 'x . . x'),
    `${TEXT}groove: {ride: x x x x}\n`,
    `${TEXT}feel: '3:1'\n`,
    TEXT.replace('id: first', 'id: first, sticking: R L'),
  ])
    expect(standing(other), other).toEqual({ number: 1, isShown: false });
  // one without a name of its own is its pattern
  expect(standing(TEXT.replace('x x x x', 'x x x .'), second)).toEqual({ number: null, isShown: false });
  expect(playedIn(lessonOf(TEXT), 3)).toBeNull();
  const kept = { ...first, facts: '{"seconds":2}', flac: Uint8Array.of(1) };
  expect(shownOf(lessonOf(TEXT), [kept, { ...kept, facts: 'no' }])).toEqual([
    { exercise: 1, seconds: 2, flac: kept.flac },
  ]);
});
