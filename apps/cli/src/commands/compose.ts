/** `shedbook compose`: writes exercises from the lesson's vocabulary into the lesson, or into another file. */
import { writeFile } from 'node:fs/promises';
import { type ComposeReport, compose } from '@shedbook/composer';
import { setExercises } from '@shedbook/core';
import { readLessonFile, requireLesson } from '../lesson-file.ts';
import type { Terminal } from '../terminal.ts';

/** What the command line asks for. */
export interface ComposeRequest {
  readonly lesson: string;
  readonly count?: number;
  readonly seed?: string;
  /** Numbers of exercises that stay in place. */
  readonly keep?: readonly number[];
  readonly out?: string;
  readonly explain?: boolean;
  readonly json?: boolean;
}

function coverageLine({ coverage }: ComposeReport): string {
  const { possible, met, missed, completeAt } = coverage;
  if (missed.length === 0)
    return `All ${possible} moves between cells are met, the last of them in exercise ${completeAt}.`;
  const names = missed.map(({ from, to }) => `${from} → ${to}`).join(', ');
  return `${met} of ${possible} moves between cells are met; missing: ${names}.`;
}

function difficultyLine({ difficulty }: ComposeReport): string {
  const points = (value: number) => Number(value.toFixed(2));
  const { easiest, hardest, largestStep } = difficulty;
  return `Difficulty rises from ${points(easiest)} to ${points(hardest)} points, no step above ${points(largestStep)}.`;
}

function barLines(report: ComposeReport): readonly string[] {
  return report.bars.map(
    (bar) => `${String(bar.number).padStart(3)}  ${bar.text}  ${bar.grade.points.toFixed(2)}`,
  );
}

/** Composes and writes. @returns the exit status. */
export async function composeCommand(request: ComposeRequest, terminal: Terminal): Promise<number> {
  const file = await readLessonFile(request.lesson);
  const lesson = requireLesson(file, terminal.warn);
  const { count, seed, keep, out = request.lesson } = request;
  const { exercises, report } = compose(lesson, {
    ...(count === undefined ? {} : { count }),
    ...(seed === undefined ? {} : { seed: /^\d+$/.test(seed) ? Number(seed) : seed }),
    ...(keep === undefined ? {} : { keep }),
  });
  await writeFile(out, setExercises(file.text, exercises, lesson.comping));
  if (request.json) {
    terminal.say(JSON.stringify({ file: out, report }, null, 2));
    return 0;
  }
  if (request.explain) for (const line of barLines(report)) terminal.say(line);
  terminal.say(`${exercises.length} exercises written to ${out}.`);
  terminal.say(coverageLine(report));
  terminal.say(difficultyLine(report));
  return 0;
}
