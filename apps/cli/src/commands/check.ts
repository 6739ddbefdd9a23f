/** `shedbook check`: the problems of lesson files, all at once. */
import { isBookFile, type LessonProblem } from '@shedbook/core';
import type { CliWords } from '@shedbook/words';
import { readBookFile } from '../book-file.ts';
import { problemLines, readLessonFile } from '../lesson-file.ts';
import type { Speaker } from '../terminal.ts';

function count(problems: readonly LessonProblem[], severity: LessonProblem['severity']): number {
  return problems.filter((problem) => problem.severity === severity).length;
}

/** A file with what is wrong with it, and how many exercises it has. */
interface Checked {
  readonly path: string;
  readonly problems: readonly LessonProblem[];
  /** Number of exercises. */
  readonly exercises: number;
}

/** A lesson, or a book with all its lessons. */
async function read(path: string): Promise<Checked> {
  if (!isBookFile(path)) {
    const { problems, lesson } = await readLessonFile(path);
    return { path, problems, exercises: lesson?.exercises.length ?? 0 };
  }
  const { problems, lessons } = await readBookFile(path);
  const exercises = [...lessons.values()].reduce((sum, lesson) => sum + lesson.exercises.length, 0);
  return { path, problems, exercises };
}

function summary(
  { path: file, problems, exercises: all }: Checked,
  { check: said, exercises: of }: CliWords,
): string {
  const [errors, warned] = [count(problems, 'error'), count(problems, 'warning')];
  const warnings = said.warnings({ count: warned });
  if (errors > 0) return said.faulty({ file, errors: said.errors({ count: errors }), warnings });
  const exercises = of({ count: all });
  return warned > 0
    ? said.inOrderWithWarnings({ file, exercises, warnings })
    : said.inOrder({ file, exercises });
}

/** Checks files of lessons and books. @returns the exit status: 0, or 2 when a file has an error. */
export async function check(paths: readonly string[], json: boolean, terminal: Speaker): Promise<number> {
  // One after the other: a program may have only so many files open.
  const files: Checked[] = [];
  for (const path of paths) files.push(await read(path));
  const { words } = terminal.catalogue;
  const problems = files.flatMap((file) => file.problems);
  if (json) {
    terminal.say(JSON.stringify({ problems }, null, 2));
  } else {
    for (const file of files)
      for (const line of problemLines(file.problems, terminal.catalogue)) terminal.warn(line);
    for (const file of files) terminal.say(summary(file, words));
  }
  return count(problems, 'error') > 0 ? 2 : 0;
}
