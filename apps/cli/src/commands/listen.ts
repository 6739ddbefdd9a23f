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
import { pictureText, REPORTS, say, withSentences } from '@shedbook/words';
import { readLessonFile, requireExercise, requireLesson } from '../lesson-file.ts';
import { hearTake } from '../listen/hear.ts';
import { reportLines } from '../listen/report-text.ts';
import { readChoice, requireForm } from '../options.ts';
import type { Speaker } from '../terminal.ts';

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
export async function listenCommand(request: ListenRequest, terminal: Speaker): Promise<number> {
  const { take, exercise, tempo } = request;
  const level = readChoice('level', request.level ?? 'intermediate', LEVELS);
  const { tag: language, words } = terminal.catalogue;
  const lesson = requireLesson(await readLessonFile(request.lesson), terminal);
  const played = requireExercise(lesson, exercise, '--exercise');
  const form = request.form === undefined ? defaultForm(lesson) : requireForm(lesson, request.form);
  const asked: Asked = { lesson, exercise, form, ...(tempo === undefined ? {} : { bpm: Bpm(tempo) }) };
  const latencySeconds =
    request.latency === undefined ? null : millisecondsToSeconds(Milliseconds(request.latency));
  terminal.progress(words.listening);
  const { report, refusal } = await hearTake(take, asked, { terminal, latencySeconds });
  terminal.progress(null);
  if (!report) throw new InputError((to) => `${take}: ${say(refusal, to.language)}`);
  if (request.picture !== undefined) {
    const title = titleOf(lesson, played, REPORTS[language].words.exercise);
    await writeFile(
      request.picture,
      drawReport(report, pictureText(report, { title, level, language })),
    ).catch((error: unknown) => {
      throw new InputError((to) => {
        const { unreadable, expected } = to.words;
        const file = `--picture: ${request.picture}`;
        return unreadable({ file, why: reasonOf(error, to), expected: expected.picture });
      });
    });
  }
  if (request.json) terminal.say(JSON.stringify(withSentences(report), null, 2));
  else for (const line of reportLines(report, { level, language })) terminal.say(line);
  return 0;
}
