/**
 * What a lesson is played in, as a teacher files it: told from its meter, its feel and how finely its beats are divided.
 */
import type { GroovePart, Lesson } from './lesson.ts';

/** The styles, in the order in which shelves show them. */
export const LESSON_STYLES = ['swing', 'waltz', 'eighths', 'sixteenths', 'compound'] as const;

/** One of the styles. */
export type LessonStyle = (typeof LESSON_STYLES)[number];

type Played = Pick<Lesson, 'meter' | 'feel' | 'groove' | 'exercises'>;

/** In how many slots the beats of some patterns are divided. */
function divisionsOf(parts: readonly Pick<GroovePart, 'pattern'>[]): readonly number[] {
  return parts.flatMap(({ pattern }) => pattern.bars.flat().map(({ marks }) => marks.length));
}

/**
 * The style of a lesson: `compound` in 6/8, 12/8 and their like, `waltz` in three, `swing` where eighths are uneven or
 * what is written in the exercises are triplets, else how finely beats are divided.
 */
export function styleOf({ meter, feel, groove, exercises }: Played): LessonStyle {
  if (meter.compound) return 'compound';
  if (meter.beats.length === 3) return 'waltz';
  const written = divisionsOf(exercises.flatMap(({ parts }) => parts));
  const under = divisionsOf(groove);
  const isInThrees = (written.length > 0 ? written : under).some((slots) => slots % 3 === 0);
  if (feel.kind !== 'even' || isInThrees) return 'swing';
  return [...written, ...under].some((slots) => slots % 4 === 0) ? 'sixteenths' : 'eighths';
}
