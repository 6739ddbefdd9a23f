/** What a teacher would say of a take, for the level of the student and in the reader's language. */

import type { FullReport } from '@shedbook/core';
import { drawReport } from '@shedbook/engrave';
import {
  LISTENER_LEVELS,
  type ListenerLevel,
  type RemarkFact,
  remarksOn,
  STUDENT_LEVELS,
  type StudentLevel,
} from '@shedbook/judge';
import { pictureText, type ReportLanguage, sayRemark } from '@shedbook/words';

/** Sentences at most. */
const SENTENCES = 3;

/** What a microphone tells badly, because it depends on where it stands. */
const OF_LEVELS: ReadonlySet<RemarkFact['kind']> = new Set(['loud', 'quiet', 'balanced', 'uneven']);

/** The ear's name of a student's level. */
export function listenerLevel(level: StudentLevel): ListenerLevel {
  return LISTENER_LEVELS[STUDENT_LEVELS.indexOf(level)] ?? LISTENER_LEVELS[0];
}

/** At most three sentences, the strongest first. */
export function takeSentences(
  report: FullReport,
  level: StudentLevel,
  language: ReportLanguage,
): readonly string[] {
  const remarks = remarksOn(report, listenerLevel(level)).filter(
    ({ kind }) => report.take.kind === 'midi' || !OF_LEVELS.has(kind),
  );
  return remarks.slice(0, SENTENCES).map((remark) => sayRemark(remark, language));
}

/** The report as a page, an SVG document of its own. */
export function reportPage(
  report: FullReport,
  level: StudentLevel,
  language: ReportLanguage,
  title: string,
): string {
  return drawReport(report, pictureText(report, { level: listenerLevel(level), language, title }));
}
