/**
 * The lessons that a student practises from, and finding an exercise of a log in them.
 *
 * Conventions: a lesson's id is lasting (e.g. its file name without the ending); logs use it.
 */
import {
  type Exercise,
  exerciseKey,
  exerciseLabel,
  type PracticeEntry,
  type PracticeLog,
  sectionOf,
} from '@shedbook/core';
import { momentOf } from '../time/moment.ts';
import { type Identity, identityOf, originOf, type ShelfLesson } from './identity.ts';

/** An exercise on the shelf; its lesson is the section that it stands in. */
export interface ShelfExercise extends ShelfLesson {
  readonly exercise: Exercise;
  /** Lasting name inside the lesson. */
  readonly key: string;
  /** One key for it and for all that is the same exercise (see `identityOf`). */
  readonly item: string;
}

function isOriginal(shelf: ShelfLesson, exercise: Exercise): boolean {
  return originOf(shelf, exercise).lesson === shelf.id;
}

/**
 * Every exercise of the lessons, in the order of the sheets; what stands twice only once: where it was written, not
 * where it was copied to.
 */
export function exercisesOf(shelf: readonly ShelfLesson[]): readonly ShelfExercise[] {
  const { itemOf } = identityOf(shelf);
  const found = new Map<string, ShelfExercise>();
  const originals = new Set<string>();
  for (const each of shelf) {
    const { id, lesson } = each;
    for (const exercise of lesson.exercises) {
      const key = exerciseKey(exercise);
      const item = itemOf(id, key);
      const original = isOriginal(each, exercise);
      if (found.has(item) && (originals.has(item) || !original)) continue;
      if (original) originals.add(item);
      found.set(item, { id, lesson: sectionOf(lesson, exercise.number), exercise, key, item });
    }
  }
  return [...found.values()];
}

/** The exercise on the shelf that a log or an assignment names, where it is still there. */
export function findExercise(
  shelf: readonly ShelfLesson[],
  lesson: string,
  exercise: string,
): ShelfExercise | undefined {
  const item = identityOf(shelf).itemOf(lesson, exercise);
  return exercisesOf(shelf).find((each) => each.item === item);
}

/** What an exercise is called: its number, its name where it has one, and its lesson. */
export function nameOf({ exercise, lesson }: Pick<ShelfExercise, 'exercise' | 'lesson'>): string {
  const name = exercise.name === null ? '' : ` (${exercise.name})`;
  return `${lesson.title} ${exerciseLabel(exercise.number)}${name}`;
}

/** Items of entries that were found before: a log is gone through again with every plan. */
const knownItems = new WeakMap<Identity, WeakMap<PracticeEntry, string>>();

function itemsBy(identity: Identity): (entry: PracticeEntry) => string {
  const known = knownItems.get(identity) ?? new WeakMap<PracticeEntry, string>();
  knownItems.set(identity, known);
  return (entry) => {
    const before = known.get(entry);
    if (before !== undefined) return before;
    const item = identity.itemOf(entry.lesson, entry.exercise);
    known.set(entry, item);
    return item;
  };
}

/** The entries of each exercise, by its item, up to a student's own day, in the order of the log. */
export function entriesByItem(
  log: PracticeLog,
  identity: Identity,
  today: number,
): ReadonlyMap<string, readonly PracticeEntry[]> {
  const items = new Map<string, PracticeEntry[]>();
  const itemOf = itemsBy(identity);
  for (const entry of log.entries) {
    if (momentOf(entry.startedAt).day > today) continue;
    const item = itemOf(entry);
    const there = items.get(item);
    if (there) there.push(entry);
    else items.set(item, [entry]);
  }
  return items;
}
