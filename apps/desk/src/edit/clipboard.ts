/**
 * What was copied or cut: kept in the browser, so that it is there in every lesson and in every window.
 */
import {
  type Exercise,
  exerciseKey,
  formatPattern,
  type Lesson,
  lessonKey,
  type Origin,
} from '@shedbook/core';
import type { Unnumbered } from './exercises.ts';
import type { Snippet } from './rearrange.ts';

/** Exercises with the lesson that they come from. */
export interface CopiedExercises {
  readonly unit: 'exercise';
  /** Lasting name of the lesson. */
  readonly lesson: string;
  /** How many beats their bars have. */
  readonly beats: number;
  /** Each with what it is a copy of, wherever it is put in another lesson. */
  readonly exercises: readonly { readonly exercise: Unnumbered; readonly origin: Origin }[];
  /** Whether they were taken out: where they are put in again in their lesson they keep their names. */
  readonly isCut: boolean;
}

/** A beat or a bar. */
export interface CopiedSnippet extends Snippet {
  readonly beats: number;
}

/** What was copied. */
export type Copied = CopiedExercises | CopiedSnippet;

/** What an exercise of a lesson is a copy of, once it stands in another one. */
function originOf(lesson: Lesson, exercise: Exercise): Origin {
  return exercise.from ?? { lesson: lesson.from ?? lessonKey(lesson), exercise: exerciseKey(exercise) };
}

/** Exercises of a lesson, to be put in elsewhere. */
export function copyExercises(
  lesson: Lesson,
  section: Pick<Lesson, 'meter'>,
  exercises: readonly Exercise[],
  isCut: boolean,
): CopiedExercises {
  const copied = exercises.map((each) => {
    const { number: _n, nth: _t, ...exercise } = each;
    return { exercise, origin: originOf(lesson, each) };
  });
  return {
    unit: 'exercise',
    lesson: lessonKey(lesson),
    beats: section.meter.beats.length,
    exercises: copied,
    isCut,
  };
}

/** The exercises as they stand in a lesson that they are put in: in another one they say what they are copies of. */
export function pastedExercises(copied: CopiedExercises, lesson: Lesson): readonly Unnumbered[] {
  const isSame = copied.lesson === lessonKey(lesson);
  return copied.exercises.map(({ exercise, origin }) => {
    if (isSame && copied.isCut) return exercise;
    const { id: _, ...copy } = exercise;
    return isSame ? copy : { ...copy, from: origin };
  });
}

/** The text of what was copied, for other programs: pattern texts, one a line. */
export function plainText(copied: Copied): string {
  if (copied.unit !== 'exercise') {
    return copied.parts.map(({ bars }) => bars.map((beats) => beats.join(' ')).join(' | ')).join('\n');
  }
  return copied.exercises
    .map(({ exercise }) => exercise.parts.map(({ pattern }) => formatPattern(pattern)).join('; '))
    .join('\n');
}

/** Raised when what is kept is written in another way: what an older program copied is then not there. */
const VERSION = 1;

/** What is copied, as it is kept. */
export function printCopied(copied: Copied): string {
  return JSON.stringify({ version: VERSION, copied });
}

/** What was kept; null where there is nothing, or nothing that can be read. */
export function readCopied(text: string | null): Copied | null {
  try {
    const { version, copied } = JSON.parse(text ?? 'null') as { version?: number; copied?: Copied };
    return version === VERSION && copied ? copied : null;
  } catch {
    return null;
  }
}
