/** Lesson files on disk. */
import { readFile } from 'node:fs/promises';
import { type Exercise, type Lesson, type LessonProblem, parseLesson } from '@shedbook/core';
import { InputError, reasonOf } from '@shedbook/host';
import { type CliCatalogue, formatProblem } from '@shedbook/words';
import { refused } from './options.ts';
import type { Speaker } from './terminal.ts';

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
    throw new InputError((to) => {
      const { unreadable, expected } = to.words;
      return unreadable({ file: path, why: reasonOf(error, to), expected: expected.lesson });
    });
  });
  return { path, text, ...parseLesson(text, path) };
}

/**
 * The lesson of a file that must have one; warnings go to the terminal.
 * @throws InputError with every problem, a line each, when there is an error.
 */
export function requireLesson({ lesson, problems }: LessonFile, terminal: Speaker): Lesson {
  const lines = (to: CliCatalogue) => problems.map((problem) => formatProblem(problem, to.language));
  if (!lesson) throw new InputError((to) => lines(to).join('\n'));
  for (const line of lines(terminal.catalogue)) terminal.warn(line);
  return lesson;
}

/**
 * The exercise with a number that a person gave as `what`.
 * @throws InputError when there is none.
 */
export function requireExercise(lesson: Lesson, number: number, what: string): Exercise {
  const exercise = lesson.exercises.find((each) => each.number === number);
  if (exercise) return exercise;
  const most = lesson.exercises.length;
  throw refused(what, `${number}`, (expected) =>
    most === 0 ? expected.withExercises : expected.exerciseTo({ most }),
  );
}
