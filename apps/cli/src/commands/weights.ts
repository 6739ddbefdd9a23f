/** `shedbook weights`: what students' takes say of the weights of difficulty; a teacher looks at them, and takes or leaves them. */
import { basename } from 'node:path';
import { fitWeights, parsePracticeLog, sureWeights, trialsIn, type WeightFit } from '@shedbook/coach';
import { editLesson, type PracticeLog } from '@shedbook/core';
import { InputError } from '@shedbook/host';
import type { CliCatalogue } from '@shedbook/words';
import { readLessonFile, requireLesson } from '../lesson-file.ts';
import type { Speaker } from '../terminal.ts';
import { readTextFile, writeTextFile } from '../text-file.ts';

/** What the command line asks for. */
export interface WeightsRequest {
  readonly lesson: string;
  /** Files of practice logs, one a student. */
  readonly log: readonly string[];
  /** Whether the fitted weights are written into the lesson. */
  readonly accept?: boolean;
  readonly json?: boolean;
}

const DIGITS = 2;

async function readLog(path: string): Promise<PracticeLog> {
  const text = await readTextFile(path, (expected) => expected.log);
  const { log } = parsePracticeLog(text, path);
  if (!log) throw new InputError(({ words }) => words.weights.noLog({ file: path }));
  return log;
}

function told(fit: WeightFit, { words: { weights: said } }: CliCatalogue): readonly string[] {
  const rows = fit.weights.map(({ part, now, fitted, error, exercises }) =>
    [
      part.padEnd(12),
      now.toFixed(DIGITS).padStart(6),
      fitted.toFixed(DIGITS).padStart(6),
      `± ${error.toFixed(DIGITS)}`.padStart(8),
      said.restsOn({ exercises }),
    ].join('  '),
  );
  const { heldOut } = fit;
  const compared = heldOut === null ? said.tooFew : said.heldOut(heldOut);
  return [said.tries({ tries: fit.tries, exercises: fit.exercises }), ...rows, compared];
}

/**
 * Fits weights and shows them; writes them only when they are accepted.
 * @returns the exit status.
 * @throws InputError when a file cannot be read, or no log tells of the lesson.
 */
export async function weights(request: WeightsRequest, terminal: Speaker): Promise<number> {
  const file = await readLessonFile(request.lesson);
  const lesson = requireLesson(file, terminal);
  const logs = await Promise.all(request.log.map(readLog));
  const id = basename(request.lesson).replace(/\.lesson\.yaml$/, '');
  const fit = fitWeights(trialsIn([{ id, lesson }], logs), lesson.compose.weights);
  if (fit.tries === 0) throw new InputError(({ words }) => words.weights.noTries({ file: request.lesson }));
  if (request.json) terminal.say(JSON.stringify(fit, null, 2));
  else for (const line of told(fit, terminal.catalogue)) terminal.say(line);
  if (!request.accept) return 0;
  const sure = sureWeights(fit);
  const text = sure.reduce(
    (written, { part, fitted }) =>
      editLesson(written, ['compose', 'weights', part], Number(fitted.toFixed(DIGITS))),
    file.text,
  );
  await writeTextFile(request.lesson, text);
  if (!request.json)
    terminal.say(terminal.catalogue.words.weights.accepted({ file: request.lesson, weights: sure.length }));
  return 0;
}
