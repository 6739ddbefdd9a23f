/**
 * Sections: parts of a lesson that are lessons of their own, with what they leave out taken from the lesson round
 * them. What plays, draws, listens and composes works on one section: one meter, one tempo, one groove.
 */
import type { Lesson } from './lesson.ts';

/** The sections of a lesson in order; one that is not divided is its own only section. At least one. */
export function sectionsOf(lesson: Lesson): readonly Lesson[] {
  return lesson.sections.length === 0 ? [lesson] : lesson.sections;
}

/**
 * The section that an exercise stands in, by its number; the first one that has a groove for the groove alone (null) and
 * where no section has that exercise. A section that is asked for its section is that section.
 */
export function sectionOf(lesson: Lesson, exercise: number | null): Lesson {
  const sections = sectionsOf(lesson);
  const own = sections.find((section) => section.exercises.some((each) => each.number === exercise));
  return own ?? sections.find(({ groove }) => groove.length > 0) ?? (sections[0] as Lesson);
}

/** The number of the exercise so many places further on, or before (negative), in the lesson; null where there is none. */
export function exerciseBeside({ exercises }: Lesson, number: number | null, by: number): number | null {
  const at = exercises.findIndex((each) => each.number === number);
  // Where none is chosen, what comes next is the first.
  return exercises[at < 0 ? by - 1 : at + by]?.number ?? null;
}

/** The section that a heading, or a number from 1, names; null for none. */
export function sectionNamed<T extends Pick<Lesson, 'heading'>>(
  sections: readonly T[],
  name: string | number,
): T | null {
  const plain = (heading: string | null) => heading?.trim().toLowerCase();
  const found =
    typeof name === 'number'
      ? sections[name - 1]
      : sections.find(({ heading }) => plain(heading) === plain(name));
  return found ?? null;
}

/** The section that a student must have before another one of the lesson; null for none. */
export function sectionBefore(lesson: Lesson, { before }: Pick<Lesson, 'before'>): Lesson | null {
  return before === undefined ? null : sectionNamed(lesson.sections, before);
}

/** What is asked of a lesson, asked of the section that its exercise stands in. */
export function inSection<T extends { readonly lesson: Lesson; readonly exercise: number | null }>(
  asked: T,
): T {
  const lesson = sectionOf(asked.lesson, asked.exercise);
  return lesson === asked.lesson ? asked : { ...asked, lesson };
}
