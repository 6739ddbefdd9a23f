/** `shedbook why`: what makes an exercise hard, or why one is harder than another. */
import { compare, explain } from '@shedbook/composer';
import { readLessonFile, requireExercise, requireLesson } from '../lesson-file.ts';
import type { Terminal } from '../terminal.ts';

/** Explains one exercise, or compares it with another. @returns the exit status. */
export async function why(
  path: string,
  numbers: readonly number[],
  json: boolean,
  terminal: Terminal,
): Promise<number> {
  const lesson = requireLesson(await readLessonFile(path), terminal.warn);
  const [first, second] = numbers.map((number) => requireExercise(lesson, number, 'exercise'));
  if (!first) return 0;
  const answer = second ? compare(lesson, second, first) : explain(lesson, first);
  terminal.say(json ? JSON.stringify(answer, null, 2) : answer.text);
  return 0;
}
