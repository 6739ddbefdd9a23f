/** Lesson files on disk. */
import { dirname } from 'node:path';
import {
  type Exercise,
  exerciseLabel,
  type Lesson,
  type LessonProblem,
  MOST_PROBLEMS,
  parseLesson,
  sectionsOf,
} from '@shedbook/core';
import { fileIn, InputError, lookAtFiles } from '@shedbook/host';
import { type CliCatalogue, formatProblem } from '@shedbook/words';
import { refused } from './options.ts';
import type { Speaker } from './terminal.ts';
import { readTextFile } from './text-file.ts';

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
  const text = await readTextFile(path, (expected) => expected.lesson);
  return { path, text, ...parseLesson(text, path, lookAtFiles(fileIn(dirname(path)))) };
}

/** Problems of a file, a line each, and a line more where others may follow. */
export function problemLines(
  problems: readonly LessonProblem[],
  { language, words }: CliCatalogue,
): readonly string[] {
  const lines = problems.map((problem) => formatProblem(problem, language));
  const isAll = problems.length < MOST_PROBLEMS;
  return isAll
    ? lines
    : [...lines, words.check.first({ file: problems[0]?.file ?? '', most: MOST_PROBLEMS })];
}

/**
 * The lesson of a file that must have one; warnings go to the terminal.
 * @throws InputError with every problem, a line each, when there is an error.
 */
export function requireLesson({ lesson, problems }: LessonFile, terminal: Speaker): Lesson {
  const lines = (to: CliCatalogue) => problemLines(problems, to);
  if (!lesson) throw new InputError((to) => lines(to).join('\n'));
  for (const line of lines(terminal.catalogue)) terminal.warn(line);
  return lesson;
}

/**
 * The section with a number (from 1), and its place among all; where a lesson is not divided, the lesson.
 * @throws InputError when there is none, or several and none was named.
 */
export function requireSection(
  lesson: Lesson,
  number: number | undefined,
): { readonly section: Lesson; readonly index: number } {
  const sections = sectionsOf(lesson);
  const asked = number ?? (sections.length === 1 ? 1 : 0);
  const section = sections[asked - 1];
  if (section) return { section, index: asked - 1 };
  const names = sections.map(({ heading, title }, i) => `${i + 1} ${heading ?? title}`).join(', ');
  throw refused('--section', number === undefined ? '–' : `${number}`, (expected) =>
    expected.sectionOf({ names }),
  );
}

/**
 * The exercise with a number that a person gave as `what`.
 * @throws InputError when there is none.
 */
export function requireExercise(lesson: Lesson, number: number, what: string): Exercise {
  const exercise = lesson.exercises.find((each) => each.number === number);
  if (exercise) return exercise;
  const { exercises } = lesson;
  const [first = null, last = first] = [exercises[0]?.number, exercises.at(-1)?.number];
  throw refused(what, exerciseLabel(number), (expected) =>
    first === null || last === null ? expected.withExercises : expected.exerciseTo({ first, last }),
  );
}
