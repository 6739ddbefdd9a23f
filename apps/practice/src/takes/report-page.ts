/** The report of a take as a page in the reader's language. */
import type { FullReport } from '@shedbook/core';
import { drawReport } from '@shedbook/engrave/report';
import { asJudged, type Judgement } from '@shedbook/judge';
import { type LanguageTag, pictureText } from '@shedbook/words';

/** The report as a page, an SVG document of its own. */
export function reportPage(
  heard: FullReport,
  judgement: Judgement,
  language: LanguageTag,
  title: string,
): string {
  const report = asJudged(heard, judgement);
  return drawReport(report, pictureText(report, { judgement, language, title }));
}
