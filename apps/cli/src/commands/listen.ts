/** `shedbook listen`: what was really played in a recording of an exercise. */
import { writeFile } from 'node:fs/promises';
import {
  Bpm,
  defaultForm,
  type Exercise,
  type Lesson,
  Milliseconds,
  millisecondsToSeconds,
} from '@shedbook/core';
import { drawReport } from '@shedbook/engrave/report';
import { InputError, reasonOf } from '@shedbook/host';
import { LEVELS } from '@shedbook/judge';
import type { Asked } from '@shedbook/listen';
import { LANGUAGE_TAGS, pictureText, REPORTS, say, withSentences } from '@shedbook/words';
import { readLessonFile, requireExercise, requireLesson } from '../lesson-file.ts';
import { hearTake } from '../listen/hear.ts';
import { reportLines } from '../listen/report-text.ts';
import { readChoice, requireForm } from '../options.ts';
import type { Terminal } from '../terminal.ts';

/** What the command line asks for. */
export interface ListenRequest {
  readonly take: string;
  readonly lesson: string;
  readonly exercise: number;
  readonly form?: string;
  /** Quarter notes a minute; the lesson's own when left out. */
  readonly tempo?: number;
  /** Where the recording began with the click: how late the click sounds in it, in ms. */
  readonly latency?: number;
  /** One of LEVELS; intermediate when left out. */
  readonly level?: string;
  /** One of LANGUAGE_TAGS; English when left out. */
  readonly language?: string;
  /** Where to write the picture. */
  readonly picture?: string;
  readonly json?: boolean;
}

function titleOf(lesson: Lesson, { number, name }: Exercise, exerciseWord: string): string {
  return `${lesson.title} · ${name ?? `${exerciseWord} ${number}`}`;
}

/**
 * Listens to a recording and prints its report. @returns the exit status.
 * @throws InputError when the recording cannot be read or is not of this exercise.
 */
export async function listenCommand(request: ListenRequest, terminal: Terminal): Promise<number> {
  const { take, exercise, tempo } = request;
  const level = readChoice('level', request.level ?? 'intermediate', LEVELS);
  const language = readChoice('language', request.language ?? 'en', LANGUAGE_TAGS);
  const lesson = requireLesson(await readLessonFile(request.lesson), terminal.warn);
  const played = requireExercise(lesson, exercise, '--exercise');
  const form = request.form === undefined ? defaultForm(lesson) : requireForm(lesson, request.form);
  const asked: Asked = { lesson, exercise, form, ...(tempo === undefined ? {} : { bpm: Bpm(tempo) }) };
  const latencySeconds =
    request.latency === undefined ? null : millisecondsToSeconds(Milliseconds(request.latency));
  terminal.progress('Listening …');
  const { report, refusal } = await hearTake(take, asked, { warn: terminal.warn, latencySeconds });
  terminal.progress(null);
  if (!report) throw new InputError(`${take}: ${say(refusal, REPORTS[language].language)}`);
  if (request.picture !== undefined) {
    const title = titleOf(lesson, played, REPORTS[language].words.exercise);
    await writeFile(
      request.picture,
      drawReport(report, pictureText(report, { title, level, language })),
    ).catch((error: unknown) => {
      throw new InputError(
        `--picture: ${request.picture}: ${reasonOf(error)}; expected a file such as take.svg`,
      );
    });
  }
  if (request.json) terminal.say(JSON.stringify(withSentences(report), null, 2));
  else for (const line of reportLines(report, { level, language })) terminal.say(line);
  return 0;
}
