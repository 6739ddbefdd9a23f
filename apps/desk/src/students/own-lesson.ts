/** What is set for a student, as a lesson of its own: to print, to hear, to take home. */
import { identityOf } from '@shedbook/coach';
import { type Exercise, exerciseKey, sectionsOf } from '@shedbook/core';
import type { StoredAssignment } from '@shedbook/routes';
import { copyOf } from '../edit/copy.ts';
import { withExercises } from '../edit/exercises.ts';
import type { DeskShelf } from './take-in.ts';

/** A lesson on the desk with its text. */
export interface DeskText extends DeskShelf {
  readonly text: string;
}

/**
 * The text of a lesson with only those of its exercises that are set, in the order in which they are, each with the
 * teacher's note; null where none of them is set.
 */
export function ownLesson(
  { id, lesson, text }: DeskText,
  shelf: readonly DeskShelf[],
  assignments: readonly StoredAssignment[],
  title: string,
): string | null {
  const { itemOf } = identityOf(shelf);
  const exercises = assignments.flatMap((assignment): Exercise[] => {
    const item = itemOf(assignment.lesson, assignment.exercise);
    const found = lesson.exercises.find((each) => itemOf(id, exerciseKey(each)) === item);
    if (assignment.lesson !== id || !found) return [];
    return [{ ...found, notes: assignment.note ?? found.notes }];
  });
  if (exercises.length === 0) return null;
  // Last section first: one that is left empty may be no section any more.
  return sectionsOf(lesson).reduceRight(
    (written, section, index) => {
      const own = exercises.filter((each) => section.exercises.some(({ number }) => number === each.number));
      return withExercises(written, section, own, index);
    },
    copyOf({ lesson, text }, title),
  );
}
