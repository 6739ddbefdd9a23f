/** What a teacher would say of a take, for the level of the student and in the reader's language. */

import type { FullReport } from '@shedbook/core';
import { drawReport } from '@shedbook/engrave/report';
import { type Level, type RemarkFact, remarksOn } from '@shedbook/judge';
import { type LanguageTag, pictureText, sayRemark } from '@shedbook/words';

/** Sentences at most. */
const SENTENCES = 3;

/** What a microphone tells badly, because it depends on where it stands. */
const OF_LEVELS: ReadonlySet<RemarkFact['kind']> = new Set(['loud', 'quiet', 'balanced', 'uneven']);

/** At most three sentences, the strongest first. */
export function takeSentences(report: FullReport, level: Level, language: LanguageTag): readonly string[] {
  const remarks = remarksOn(report, level).filter(
    ({ kind }) => report.take.kind === 'midi' || !OF_LEVELS.has(kind),
  );
  return remarks.slice(0, SENTENCES).map((remark) => sayRemark(remark, language));
}

/** The report as a page, an SVG document of its own. */
export function reportPage(report: FullReport, level: Level, language: LanguageTag, title: string): string {
  return drawReport(report, pictureText(report, { level, language, title }));
}
