/** `shedbook weights`: what students' takes say of the weights of difficulty; a teacher looks at them, and takes or leaves them. */
import { basename } from 'node:path';
import { fitWeights, sureWeights, trialsIn, type WeightFit } from '@shedbook/coach';
import { editLesson, type PracticeLog } from '@shedbook/core';
import { InputError, readOutside } from '@shedbook/host';
import { type CliCatalogue, formatProblem } from '@shedbook/words';
import { readLessonFile, requireLesson } from '../lesson-file.ts';
import type { Speaker } from '../terminal.ts';
import { writeTextFile } from '../text-file.ts';

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

/** Problems of a log that are told: a file of thousands is none the better for it. */
const MOST_TOLD = 20;

/** A practice log; an entry that cannot be read costs that entry, which is said. @throws InputError where nothing can be read */
async function readLog(path: string, terminal: Speaker): Promise<PracticeLog> {
  const { soundEntries, problems } = await readOutside('log', { path, expected: ({ log }) => log }, {});
  const lines = ({ language, words }: CliCatalogue) => [
    ...problems.slice(0, MOST_TOLD).map((problem) => formatProblem(problem, language)),
    ...(problems.length > MOST_TOLD ? [words.moreProblems({ more: problems.length - MOST_TOLD })] : []),
  ];
  if (!soundEntries) throw new InputError((to) => lines(to).join('\n'));
  for (const line of lines(terminal.catalogue)) terminal.warn(line);
  return soundEntries;
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
  // One after the other: each is read in the time and memory that it is given.
  const logs: PracticeLog[] = [];
  for (const path of request.log) logs.push(await readLog(path, terminal));
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
