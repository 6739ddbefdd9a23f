/** `shedbook check`: the problems of lesson files, all at once. */
import type { LessonProblem } from '@shedbook/core';
import { ENGLISH, formatProblem } from '@shedbook/words';
import { type LessonFile, readLessonFile } from '../lesson-file.ts';
import type { Terminal } from '../terminal.ts';

function count(problems: readonly LessonProblem[], severity: LessonProblem['severity']): number {
  return problems.filter((problem) => problem.severity === severity).length;
}

function plural(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? '' : 's'}`;
}

function summary(file: LessonFile): string {
  const errors = count(file.problems, 'error');
  const warnings = count(file.problems, 'warning');
  if (errors > 0) return `${file.path}: ${plural(errors, 'error')}, ${plural(warnings, 'warning')}`;
  const exercises = plural(file.lesson?.exercises.length ?? 0, 'exercise');
  return `${file.path}: in order, ${exercises}${warnings > 0 ? `, ${plural(warnings, 'warning')}` : ''}`;
}

/** Checks lesson files. @returns the exit status: 0, or 2 when a file has an error. */
export async function check(paths: readonly string[], json: boolean, terminal: Terminal): Promise<number> {
  const files = await Promise.all(paths.map(readLessonFile));
  const problems = files.flatMap((file) => file.problems);
  if (json) {
    terminal.say(JSON.stringify({ problems }, null, 2));
  } else {
    for (const problem of problems) terminal.warn(formatProblem(problem, ENGLISH));
    for (const file of files) terminal.say(summary(file));
  }
  return count(problems, 'error') > 0 ? 2 : 0;
}
