/** `shedbook listen`: what was really played in a recording of an exercise. */
import { type Asked, LISTENER_LEVELS, REPORT_LANGUAGES } from '@shedbook/listen';
import { formNamed, readChoice } from '../build/request.ts';
import { InputError } from '../input-error.ts';
import { readLessonFile, requireExercise, requireLesson } from '../lesson-file.ts';
import { hearTake } from '../listen/hear.ts';
import { reportLines } from '../listen/report-text.ts';
import type { Terminal } from '../terminal.ts';

/** What the command line asks for. */
export interface ListenRequest {
  readonly take: string;
  readonly lesson: string;
  readonly exercise: number;
  readonly form?: string;
  readonly tempo?: number;
  /** One of LISTENER_LEVELS; intermediate when left out. */
  readonly level?: string;
  /** One of REPORT_LANGUAGES; English when left out. */
  readonly language?: string;
  readonly json?: boolean;
}

/**
 * Listens to a recording and prints its report. @returns the exit status.
 * @throws InputError when the recording cannot be read or is not of this exercise.
 */
export async function listenCommand(request: ListenRequest, terminal: Terminal): Promise<number> {
  const { take, exercise, tempo } = request;
  const level = readChoice('level', request.level ?? 'intermediate', LISTENER_LEVELS);
  const language = readChoice('language', request.language ?? 'en', REPORT_LANGUAGES);
  const lesson = requireLesson(await readLessonFile(request.lesson), terminal.warn);
  requireExercise(lesson, exercise, '--exercise');
  const form = formNamed(lesson, request.form ?? 'loop');
  const asked: Asked = { lesson, exercise, form, ...(tempo === undefined ? {} : { bpm: tempo }) };
  terminal.progress('Listening …');
  const { report, refusal } = await hearTake(take, asked, terminal.warn);
  terminal.progress(null);
  if (!report) throw new InputError(`${take}: ${refusal.message}`);
  if (request.json) terminal.say(JSON.stringify(report, null, 2));
  else for (const line of reportLines(report, { level, language })) terminal.say(line);
  return 0;
}
