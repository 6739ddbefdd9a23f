import { readFileSync } from 'node:fs';
import { exerciseKey, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { DEMO_LESSONS } from '../../../../internal/testing/demo-lessons.ts';
import { keyOf, logOf, NOW } from '../../test/students.ts';
import type { ShelfLesson } from '../mastery/identity.ts';
import { draftNext } from './draft.ts';
import { summariseStudent } from './summary.ts';

/** The desk as somebody new finds it, the lesson that was last worked on first. */
const DESK: readonly ShelfLesson[] = DEMO_LESSONS.map((name) => {
  const { lesson } = parseLesson(
    readFileSync(new URL(`../../../../demo/${name}`, import.meta.url), 'utf8'),
    name,
  );
  if (!lesson) throw new Error(`${name} is no lesson`);
  return { id: name.replace('.lesson.yaml', ''), lesson };
});

function lessonOf(id: string): ShelfLesson {
  const found = DESK.find((each) => each.id === id);
  if (!found) throw new Error(`no lesson ${id}`);
  return found;
}

function nextOf(shelf: readonly ShelfLesson[], set: readonly (readonly [string, number])[] = []) {
  const assignments = set.map(([id, number]) => {
    return { lesson: id, exercise: keyOf(lessonOf(id), number), pinned: false, note: null };
  });
  const { next } = summariseStudent({ name: 'Bram', shelf, log: logOf(), assignments }, NOW);
  return next && { id: next.exercise.id, number: next.exercise.exercise.number, why: next.why };
}

it('[CH3800] who has no lesson yet begins with the first exercise of the swing that begins easiest', () => {
  // common practice: swing is four beats over the ride, and one stroke on 1 is easier than any other page begins
  expect(nextOf(DESK)).toEqual({
    ...{ id: 'first-swing', number: 1 },
    why: { fact: 'begin-swing', lesson: 'First swing' },
  });
  expect(nextOf(DESK.toReversed())).toEqual(nextOf(DESK));
  const draft = draftNext({ name: 'Bram', shelf: DESK, log: logOf(), assignments: [] }, NOW);
  expect(draft.map(({ lesson, key, isTaken }) => [lesson, key, isTaken])).toEqual([
    ['first-swing', exerciseKey(lessonOf('first-swing').lesson.exercises[0] as never), true],
  ]);
});

it('[CH3800] without swing on the desk it is whatever begins easiest; one lesson alone is not compared', () => {
  const even = DESK.filter(({ id }) => ['bossa', 'funk', 'funk-fills', 'shuffle'].includes(id));
  // definition: the shuffle begins with one bass drum on 1 under two hands, the others with more strokes on more limbs
  expect(nextOf(even)).toMatchObject({ id: 'shuffle', number: 1, why: { fact: 'begin-easiest' } });
  expect(nextOf([lessonOf('bossa')])).toEqual({
    ...{ id: 'bossa', number: 1 },
    why: { fact: 'begin-lesson', lesson: 'Straight-eighth bossa' },
  });
  expect(nextOf([])).toBeNull();
});

it('[CH3800] a lesson that is theirs begins at its first exercise, the lesson that was set first before the others', () => {
  const bossaFirst = nextOf(DESK, [
    ['funk', 4],
    ['bossa', 4],
  ]);
  expect(bossaFirst).toMatchObject({ id: 'funk', number: 1, why: { fact: 'begin-lesson' } });
  const next = nextOf(DESK, [['jazz-waltz', 1]]);
  expect(next).toMatchObject({ id: 'jazz-waltz', number: 2, why: { fact: 'after-set' } });
});
