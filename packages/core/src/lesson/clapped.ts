/**
 * Exercises that are clapped: hands alone, no kit. Whoever claps them is heard as on one surface.
 */
import type { Exercise, Lesson } from './lesson.ts';
import type { Surface } from './onto-pad.ts';
import { sectionOf } from './section.ts';

/** Whether an exercise is clapped throughout. */
export function isClapped({ parts }: Pick<Exercise, 'parts'>): boolean {
  return parts.length > 0 && parts.every(({ voice }) => voice === 'clap');
}

/** Whether a section can be prepared for: it has exercises for the kit, and names nothing that comes first yet. */
export function canBePrepared({ before, exercises }: Pick<Lesson, 'before' | 'exercises'>): boolean {
  return before === undefined && !exercises.every(isClapped);
}

/** What an exercise is played on: what is chosen, and one surface where it is clapped. */
export function playedOn(lesson: Lesson, exercise: number | null, chosen: Surface): Surface {
  const asked = sectionOf(lesson, exercise).exercises.find(({ number }) => number === exercise);
  return asked && isClapped(asked) ? 'pad' : chosen;
}
