/**
 * Lasting names within a lesson: one exercise, one name. The same patterns over the same groove are the same exercise;
 * over another groove, in another section, they are another one, which is told apart by a number.
 */
import { patternsName, surroundingsOf } from '../lesson/identity.ts';
import type { Exercise, Lesson } from '../lesson/lesson.ts';
import { quoted } from '../lesson/value-fact.ts';
import type { Report } from './fault.ts';
import type { FieldPath } from './field-path.ts';

/** What goes by a name already. */
interface Named {
  readonly exercise: Exercise;
  readonly over: string;
}

/** The first number, from 1, whose name is free or belongs to the same exercise. */
function numberFor(patterns: string, over: string, taken: ReadonlyMap<string, Named>): number {
  for (let nth = 1; ; nth += 1) {
    const other = taken.get(nameOf(patterns, nth));
    const isSame = other?.over === over && patternsName(other.exercise) === patterns;
    if (!other || isSame) return nth;
  }
}

function nameOf(patterns: string, nth: number): string {
  return nth === 1 ? patterns : `${patterns} #${nth}`;
}

/** Written names; one that stands twice is warned of. */
function writtenNames(
  sections: readonly Lesson[],
  pathOf: (exercise: number) => FieldPath,
  report: Report,
): Map<string, Named> {
  const taken = new Map<string, Named>();
  for (const section of sections) {
    const over = surroundingsOf(section);
    for (const exercise of section.exercises) {
      const { id, number } = exercise;
      if (id === undefined) continue;
      const before = taken.get(id);
      if (!before) taken.set(id, { exercise, over });
      else
        report({
          code: 'same-name',
          severity: 'warning',
          path: [...pathOf(number), 'id'],
          found: quoted(id),
          expected: { fact: 'each-name-once', exercise: before.exercise.number },
        });
    }
  }
  return taken;
}

/** The sections with their exercises told apart. */
export function nameExercises(
  sections: readonly Lesson[],
  pathOf: (exercise: number) => FieldPath,
  report: Report,
): readonly Lesson[] {
  const taken = writtenNames(sections, pathOf, report);
  return sections.map((section) => {
    const over = surroundingsOf(section);
    const exercises = section.exercises.map((exercise) => {
      if (exercise.id !== undefined) return exercise;
      const patterns = patternsName(exercise);
      const nth = numberFor(patterns, over, taken);
      taken.set(nameOf(patterns, nth), { exercise, over });
      return nth === 1 ? exercise : { ...exercise, nth };
    });
    return { ...section, exercises };
  });
}
