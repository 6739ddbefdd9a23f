/** `shedbook why`: what makes an exercise hard, or why one is harder than another. */
import { compare, type Explanation, explain } from '@shedbook/composer';
import type { Exercise, Lesson } from '@shedbook/core';
import { cliEnglish, ENGLISH, say, speak } from '@shedbook/words';
import { readLessonFile, requireExercise, requireLesson } from '../lesson-file.ts';
import type { Terminal } from '../terminal.ts';

const words = speak(cliEnglish, ENGLISH.tongue);

/** An explanation as a text of several lines, heaviest reason first. */
function explanationText(number: number, { pattern, grade, reasons }: Explanation): string {
  const lines = reasons.map(({ points, why }) => `  ${points.toFixed(1).padStart(4)}  ${say(why, ENGLISH)}`);
  return [words.why.title({ number, pattern, points: grade.points }), ...lines].join('\n');
}

/** An explanation with its sentences. */
function explained(lesson: Lesson, exercise: Exercise) {
  const explanation = explain(lesson, exercise);
  const reasons = explanation.reasons.map((reason) => ({ ...reason, text: say(reason.why, ENGLISH) }));
  return { ...explanation, reasons, text: explanationText(exercise.number, explanation) };
}

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
  const answer = second ? compare(lesson, second, first) : explained(lesson, first);
  terminal.say(json ? JSON.stringify(answer, null, 2) : answer.text);
  return 0;
}
