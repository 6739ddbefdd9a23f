/** `shedbook why`: what makes an exercise hard, or why one is harder than another. */
import { compare, type Explanation, explain, saidReasons } from '@shedbook/composer';
import type { Exercise, Lesson } from '@shedbook/core';
import { type CliCatalogue, say } from '@shedbook/words';
import { readLessonFile, requireExercise, requireLesson } from '../lesson-file.ts';
import type { Speaker } from '../terminal.ts';

/** An explanation as a text of several lines, heaviest reason first. */
function explanationText(
  number: number,
  { pattern, grade, reasons }: Explanation,
  { words, language }: CliCatalogue,
): string {
  const lines = saidReasons(reasons).map(
    ({ points, why }) => `  ${points.toFixed(1).padStart(4)}  ${say(why, language)}`,
  );
  return [words.why.title({ number, pattern, points: grade.points }), ...lines].join('\n');
}

/** An explanation with its sentences. */
function explained(lesson: Lesson, exercise: Exercise, to: CliCatalogue) {
  const explanation = explain(lesson, exercise);
  const reasons = explanation.reasons.map((reason) => ({ ...reason, text: say(reason.why, to.language) }));
  return { ...explanation, reasons, text: explanationText(exercise.number, explanation, to) };
}

/** A comparison with its sentences. */
function compared(lesson: Lesson, first: Exercise, second: Exercise, { language }: CliCatalogue) {
  const { points, reasons, fact } = compare(lesson, first, second);
  const said = reasons.map((reason) => ({ ...reason, text: say(reason.what, language) }));
  return { points, reasons: said, text: say(fact, language) };
}

/** Explains one exercise, or compares it with another. @returns the exit status. */
export async function why(
  path: string,
  numbers: readonly number[],
  json: boolean,
  terminal: Speaker,
): Promise<number> {
  const lesson = requireLesson(await readLessonFile(path), terminal);
  const [first, second] = numbers.map((number) => requireExercise(lesson, number, 'exercise'));
  if (!first) return 0;
  const to = terminal.catalogue;
  const answer = second ? compared(lesson, second, first, to) : explained(lesson, first, to);
  terminal.say(json ? JSON.stringify(answer, null, 2) : answer.text);
  return 0;
}
