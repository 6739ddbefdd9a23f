/** One student's plan: the same on the page that they practise on and on their teacher's desk. */
import type { PracticeLog } from '@shedbook/core';
import { identityOf, type ShelfLesson } from '../mastery/identity.ts';
import { planPractice } from './plan.ts';
import type { Assignment, PlanTask, PracticePlan } from './plan-item.ts';

/** Minutes that a plan is made for where the student has not said how many they have. */
export const USUAL_MINUTES = 20;

/** Characters of a student's lasting name that their own page keeps. */
const SHORT = 8;

/** The short name of a student, as their own page keeps it: nothing that says who they are. */
export function shortNameOf(student: string): string {
  return student.slice(0, SHORT);
}

/**
 * The lessons of a desk that one student practises from: those that something is set of, or, where nothing is set,
 * those that they have played.
 */
export function lessonsOf<Own extends ShelfLesson>(
  shelf: readonly Own[],
  assignments: readonly Assignment[],
  { entries }: PracticeLog,
): readonly Own[] {
  const { itemOf } = identityOf(shelf);
  const named = assignments.length > 0 ? assignments : entries;
  const own = new Set(named.map(({ lesson }) => itemOf(lesson, null)));
  return shelf.filter(({ id }) => own.has(itemOf(id, null)));
}

/**
 * The plan for today of one student, by their lasting or their short name: whatever the order of their lessons.
 * @throws RangeError when `minutes` is not a number or `now` is not a moment.
 */
export function planFor(student: string, task: Omit<PlanTask, 'seed'>): PracticePlan {
  const shelf = task.shelf.toSorted((a, b) => (a.id < b.id ? -1 : 1));
  return planPractice({ ...task, shelf, seed: shortNameOf(student) });
}
