/**
 * The lessons that a student practises from, and finding an exercise of a log in them.
 *
 * Conventions: a lesson's id is lasting (e.g. its file name without the ending); logs use it.
 */
import { type Exercise, type Lesson, type PracticeEntry, type PracticeLog, sectionOf } from '@shedbook/core';
import { exerciseKey, itemKey } from '../log/key.ts';
import { momentOf } from '../time/moment.ts';

/** A lesson under its lasting name. */
export interface ShelfLesson {
  readonly id: string;
  readonly lesson: Lesson;
}

/** An exercise on the shelf; its lesson is the section that it stands in. */
export interface ShelfExercise extends ShelfLesson {
  readonly exercise: Exercise;
  /** Lasting name inside the lesson. */
  readonly key: string;
}

/** Every exercise of the lessons, in the order of the sheets; one that stands twice in a lesson only once. */
export function exercisesOf(shelf: readonly ShelfLesson[]): readonly ShelfExercise[] {
  const seen = new Set<string>();
  return shelf.flatMap(({ id, lesson }) =>
    lesson.exercises.flatMap((exercise): ShelfExercise[] => {
      const key = exerciseKey(exercise);
      const item = itemKey(id, key);
      if (seen.has(item)) return [];
      seen.add(item);
      return [{ id, lesson: sectionOf(lesson, exercise.number), exercise, key }];
    }),
  );
}

/** What an exercise is called: its number, its name where it has one, and its lesson. */
export function nameOf({ exercise, lesson }: Pick<ShelfExercise, 'exercise' | 'lesson'>): string {
  const name = exercise.name === null ? '' : ` (${exercise.name})`;
  return `${lesson.title} ${exercise.number}${name}`;
}

/** The entries of each lesson and exercise by the student's own day, days in order. */
export function entriesByDay(
  log: PracticeLog,
): ReadonlyMap<string, ReadonlyMap<number, readonly PracticeEntry[]>> {
  const items = new Map<string, Map<number, PracticeEntry[]>>();
  for (const entry of log.entries) {
    const key = itemKey(entry.lesson, entry.exercise);
    const days = items.get(key) ?? new Map<number, PracticeEntry[]>();
    const { day } = momentOf(entry.startedAt);
    const there = days.get(day);
    if (there) there.push(entry);
    else days.set(day, [entry]);
    items.set(key, days);
  }
  return new Map([...items].map(([key, days]) => [key, new Map([...days].toSorted(([a], [b]) => a - b))]));
}
