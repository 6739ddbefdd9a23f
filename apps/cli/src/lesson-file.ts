/** Lesson files on disk. */
import { readFile } from 'node:fs/promises';
import { type Exercise, type Lesson, type LessonProblem, parseLesson } from '@shedbook/core';
import { InputError, reasonOf } from '@shedbook/host';
import { ENGLISH, formatProblem } from '@shedbook/words';

/** A lesson file, read and parsed. */
export interface LessonFile {
  readonly path: string;
  readonly text: string;
  /** Null when there is an error among the problems. */
  readonly lesson: Lesson | null;
  readonly problems: readonly LessonProblem[];
}

/**
 * Reads a lesson file.
 * @throws InputError when the file cannot be read.
 */
export async function readLessonFile(path: string): Promise<LessonFile> {
  const text = await readFile(path, 'utf8').catch((error: unknown) => {
    throw new InputError(`${path}: ${reasonOf(error)}; expected a lesson file such as first.lesson.yaml`);
  });
  return { path, text, ...parseLesson(text, path) };
}

/**
 * The lesson of a file that must have one; warnings go to `warn`.
 * @throws InputError with every problem, a line each, when there is an error.
 */
export function requireLesson(file: LessonFile, warn: (line: string) => void): Lesson {
  const lines = file.problems.map((problem) => formatProblem(problem, ENGLISH));
  if (!file.lesson) throw new InputError(lines.join('\n'));
  for (const line of lines) warn(line);
  return file.lesson;
}

/**
 * The exercise with a number that a person gave as `what`.
 * @throws InputError when there is none.
 */
export function requireExercise(lesson: Lesson, number: number, what: string): Exercise {
  const exercise = lesson.exercises.find((each) => each.number === number);
  if (exercise) return exercise;
  const most = lesson.exercises.length;
  const expected = most === 0 ? 'a lesson with exercises' : `a number from 1 to ${most}`;
  throw new InputError(`${what}: found ${number}, expected ${expected}`);
}
