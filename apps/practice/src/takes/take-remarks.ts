/** What came of a take, for the level of the student, and the report as a page in the reader's language. */

import { exerciseKey, type Form, type FullReport, type Lesson } from '@shedbook/core';
import { drawReport } from '@shedbook/engrave/report';
import { type Judgement, judge, judgeTaskOf, type Level } from '@shedbook/judge';
import { type LanguageTag, pictureText } from '@shedbook/words';
import type { Take } from './take.ts';

/** Number of the take's exercise on today's sheet; null for the groove alone, undefined where it is gone. */
export function numberToday(lesson: Lesson, take: Pick<Take, 'exercise'>): number | null | undefined {
  if (take.exercise === null) return null;
  return lesson.exercises.find((each) => exerciseKey(each) === take.exercise)?.number;
}

/** The verdict on a take; null where there is no report, or its exercise is gone from the sheet. */
export function judgeTaken(take: Take, lesson: Lesson, form: Form, level: Level): Judgement | null {
  const exercise = numberToday(lesson, take);
  const bpm = take.loops.at(-1)?.bpm ?? lesson.tempo.startBpm;
  if (!take.report || exercise === undefined) return null;
  const { bpm: asked, ...task } = judgeTaskOf({
    ...{ lesson, exercise, form, bpm },
    layers: take.layers,
    mine: take.mine ?? [],
  });
  // a report that was kept without its click may have climbed the ladder: any rung was asked
  const told = take.report.click && asked !== undefined ? { bpm: asked } : {};
  return judge({ ...task, ...told }, { report: take.report }, level);
}

/** The report as a page, an SVG document of its own. */
export function reportPage(
  report: FullReport,
  judgement: Judgement,
  language: LanguageTag,
  title: string,
): string {
  return drawReport(report, pictureText(report, { judgement, language, title }));
}
