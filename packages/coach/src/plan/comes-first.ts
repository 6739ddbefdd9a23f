/**
 * What must come first: the section that another one names, as long as a student does not have it.
 *
 * Conventions: an exercise is had once it was clean at the tempo that its section starts from. A section of which
 * something was clean before waits for nothing: whoever plays it is past its preparation.
 */
import { isClapped, type Lesson, sectionBefore, sectionsOf } from '@shedbook/core';
import type { ExerciseStanding } from '../mastery/exercises.ts';
import type { ShelfLesson } from '../mastery/identity.ts';

/** A played tempo wanders by a few percent; this much below the start is still the start. */
const TEMPO_SLACK = 0.97;

/** What a student lacks of what comes before a section. */
export interface Lacking {
  /** What it comes before: the heading of that section, or the title of its lesson. */
  readonly before: string;
  readonly exercises: readonly ExerciseStanding[];
}

/** Says of an exercise what must come first; none where nothing must. */
export type ComesFirst = (exercise: ExerciseStanding) => Lacking | null;

function isHad({ cleanBpm, lesson }: ExerciseStanding): boolean {
  return cleanBpm !== null && cleanBpm >= lesson.tempo.startBpm * TEMPO_SLACK;
}

/** What must come first of the exercises on a shelf, as they stand. */
export function comesFirst(
  shelf: readonly ShelfLesson[],
  standings: readonly ExerciseStanding[],
): ComesFirst {
  const whole = new Map(shelf.map(({ id, lesson }) => [id, lesson]));
  const inSection = (id: string, { heading }: Lesson) =>
    standings.filter((each) => each.id === id && each.lesson.heading === heading);
  const lackingOf = (id: string, section: Lesson): readonly ExerciseStanding[] => {
    const lesson = whole.get(id);
    const needed = lesson ? sectionBefore(lesson, section) : null;
    if (!needed || inSection(id, section).some(isHad)) return [];
    return [...lackingOf(id, needed), ...inSection(id, needed).filter((each) => !isHad(each))];
  };
  return ({ id, lesson }) => {
    const exercises = lackingOf(id, lesson);
    return exercises.length === 0 ? null : { before: lesson.heading ?? lesson.title, exercises };
  };
}

/** All but what was clapped before sections of which something was clean since, or the teacher passed: they need it no more. */
export function withoutPastClapping(
  shelf: readonly ShelfLesson[],
  standings: readonly ExerciseStanding[],
): readonly ExerciseStanding[] {
  const past = new Set<Lesson>();
  for (const { id, lesson } of shelf) {
    const isPlayed = ({ heading }: Lesson) =>
      standings.some((each) => each.id === id && each.lesson.heading === heading && isHad(each));
    for (const section of sectionsOf(lesson).filter(isPlayed)) {
      const before = sectionBefore(lesson, section);
      if (before) past.add(before);
    }
  }
  return standings.filter(({ lesson, exercise }) => !(isClapped(exercise) && past.has(lesson)));
}
