import { expect, it } from 'vitest';
import { funk, swing } from '../../../../internal/testing/loops.ts';
import { keyOf, logOf, loops, NOW } from '../../test/students.ts';
import { lessonsOf, planFor, shortNameOf, USUAL_MINUTES } from './student-plan.ts';

const STUDENT = '2f7c1d90-52aa-4c4e-9a51-6f0d6f3e8a11';
const ASSIGNMENTS = [{ lesson: swing.id, exercise: keyOf(swing, 2), pinned: false, note: null }];
const LOG = logOf({ shelf: funk, number: 1, daysAgo: 2, loops: loops(6, 96, 'clean') });

it('[CH1900] desk and page plan the same for a student, from the lessons that are set', () => {
  const task = { log: LOG, now: NOW, minutes: USUAL_MINUTES, assignments: ASSIGNMENTS };
  // the desk knows every lesson and the whole name, the page what came by the link and the short one
  const desk = planFor(STUDENT, { ...task, shelf: lessonsOf([funk, swing], ASSIGNMENTS, LOG) });
  const page = planFor(shortNameOf(STUDENT), { ...task, shelf: [swing] });
  expect(desk).toEqual(page);
  expect(new Set(desk.items.flatMap(({ lesson }) => lesson ?? []))).toEqual(new Set([swing.id]));
});

it('[CH1900] the order of the lessons changes nothing', () => {
  const task = { log: LOG, now: NOW, minutes: 45, assignments: ASSIGNMENTS };
  expect(planFor('a', { ...task, shelf: [swing, funk] })).toEqual(
    planFor('a', { ...task, shelf: [funk, swing] }),
  );
});

it('[CH1900] where nothing is set it is what was played, and nothing of anybody else', () => {
  expect(lessonsOf([swing, funk], [], LOG)).toEqual([funk]);
  expect(lessonsOf([swing, funk], [], logOf())).toEqual([]);
});
