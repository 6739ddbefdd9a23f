/**
 * What is the same exercise: an exercise and its copies in other lessons, under all names that logs, assignments and
 * copies may know them by.
 *
 * Conventions: an exercise is the same as what it was copied from, whatever was changed in the copy since; and the same
 * patterns over the same groove are the same exercise, whoever wrote them down again.
 */
import {
  type Exercise,
  exerciseKey,
  type Lesson,
  lessonKey,
  type Origin,
  patternsName,
  sectionsOf,
  surroundingsOf,
} from '@shedbook/core';
import { itemKey } from '../log/key.ts';

/** A lesson under its lasting name. */
export interface ShelfLesson {
  readonly id: string;
  readonly lesson: Lesson;
}

/** Finds one key for whatever is the same exercise. */
export interface Identity {
  /** The key of an exercise (null: the groove alone) by the names that a log or an assignment has. */
  readonly itemOf: (lesson: string, exercise: string | null) => string;
}

/** What a lesson says of its names: everything that is needed to tell what is the same exercise. */
export interface LessonNames {
  /** The lasting name of the lesson. */
  readonly key: string;
  /** Lasting name of the lesson that it is a copy of, or null. */
  readonly from: string | null;
  /** Whether its exercises are numbered anew in each section; left out where they are not. */
  readonly anew?: true;
  readonly sections: readonly {
    /** What its exercises are played over (see `surroundingsOf`). */
    readonly over: string;
    readonly exercises: readonly {
      readonly key: string;
      /** What it is called by what it plays. */
      readonly patterns: string;
      readonly from: Origin | null;
    }[];
  }[];
}

/** A lesson's names under its lasting name. */
export interface ShelfNames {
  readonly id: string;
  readonly names: LessonNames;
}

/** The names of a lesson and of its exercises. */
export function namesOf(lesson: Lesson): LessonNames {
  const sections = sectionsOf(lesson).map((section) => ({
    over: surroundingsOf(section),
    exercises: section.exercises.map((exercise) => ({
      key: exerciseKey(exercise),
      patterns: patternsName(exercise),
      from: exercise.from ?? null,
    })),
  }));
  const anew = lesson.sheet.numbering === 'anew' && lesson.sections.length > 0 ? { anew: true as const } : {};
  return { key: lessonKey(lesson), from: lesson.from, ...anew, sections };
}

/** Every name that a lesson on the shelf goes by, to its id there; ids before titles. */
function homesOf(shelf: readonly ShelfNames[]): ReadonlyMap<string, string> {
  const byKey = shelf.toReversed().map(({ id, names }) => [names.key, id] as const);
  return new Map([...byKey, ...shelf.map(({ id }) => [id, id] as const)]);
}

/**
 * The names that what is played of a lesson is kept under: a copy's under those of what it was copied from.
 * @param exercise null: the groove alone
 */
export function originOf(
  { id, lesson }: ShelfLesson,
  exercise: Exercise | null,
): { readonly lesson: string; readonly exercise: string | null } {
  if (exercise?.from) return exercise.from;
  return { lesson: lesson.from ?? id, exercise: exercise && exerciseKey(exercise) };
}

/** Names of exercises while they are gathered. */
class Names {
  readonly items = new Map<string, string>();
  private readonly bySound = new Map<string, string>();
  private readonly homes: ReadonlyMap<string, string>;

  constructor(shelf: readonly ShelfNames[]) {
    this.homes = homesOf(shelf);
    // What is no copy first: its own names are those that copies are called by.
    for (const each of shelf.toSorted((a, b) => Number(isCopy(a)) - Number(isCopy(b)))) this.addLesson(each);
    for (const each of shelf) this.addPatterns(each);
  }

  readonly homeOf = (lesson: string) => this.homes.get(lesson) ?? lesson;

  private addLesson({ id, names }: ShelfNames): void {
    for (const { over, exercises } of names.sections) {
      for (const { key, patterns, from: written } of exercises) {
        const origin = written ?? { lesson: names.from ?? id, exercise: key };
        const from = itemKey(this.homeOf(origin.lesson), origin.exercise);
        const sound = `${patterns}\n${over}`;
        const item = this.items.get(from) ?? this.bySound.get(sound) ?? from;
        this.addName(from, item);
        this.addName(itemKey(id, key), item);
        if (!this.bySound.has(sound)) this.bySound.set(sound, item);
      }
    }
  }

  /** An exercise that was given a name may have been practised before under its patterns. */
  private addPatterns({ id, names }: ShelfNames): void {
    for (const { key, patterns } of names.sections.flatMap(({ exercises }) => exercises)) {
      const item = this.items.get(itemKey(id, key));
      if (item) this.addName(itemKey(id, patterns), item);
    }
  }

  private addName(name: string, item: string): void {
    if (!this.items.has(name)) this.items.set(name, item);
  }
}

function isCopy({ names }: ShelfNames): boolean {
  return names.from !== null || names.sections.some(({ exercises }) => exercises.some(({ from }) => from));
}

/** What is the same among the lessons that have these names. */
export function identityOfNames(shelf: readonly ShelfNames[]): Identity {
  const names = new Names(shelf);
  const copies = new Map(shelf.map((each) => [each.id, each.names.from]));
  const found = new Map<string, string>();
  const find = (lesson: string, exercise: string | null) => {
    const home = names.homeOf(lesson);
    const own = names.items.get(itemKey(home, exercise));
    if (own !== undefined) return own;
    const from = itemKey(names.homeOf(copies.get(home) ?? home), exercise);
    return names.items.get(from) ?? from;
  };
  return {
    itemOf: (lesson, exercise) => {
      const name = itemKey(lesson, exercise);
      const item = found.get(name) ?? find(lesson, exercise);
      found.set(name, item);
      return item;
    },
  };
}

const known = new WeakMap<readonly ShelfLesson[], Identity>();

/** What is the same among the lessons of a shelf; found once for a shelf. */
export function identityOf(shelf: readonly ShelfLesson[]): Identity {
  const identity =
    known.get(shelf) ?? identityOfNames(shelf.map(({ id, lesson }) => ({ id, names: namesOf(lesson) })));
  known.set(shelf, identity);
  return identity;
}
