/** Everything that the picture of a report says, in one language. */
import type { FullReport } from '@shedbook/core';
import { DISPLACEMENT } from '@shedbook/judge';
import type { ReportCatalogue } from './catalogue.ts';
import { type SayOptions, teacherSentences } from './say.ts';
import { unheardSentences } from './unheard.ts';
import { wordsOf } from './words.ts';

/** How early or late something is, in ms; what nobody hears is in time. */
export function sayLateness(offsetMs: number, { report }: ReportCatalogue): string {
  const ms = Math.round(Math.abs(offsetMs));
  return ms < DISPLACEMENT.leastMs ? report.inTime : `${ms} ms ${offsetMs > 0 ? report.late : report.early}`;
}

/** For whom, in which language, and what the page is called. */
export interface PictureOptions extends SayOptions {
  readonly title: string;
}

/** Tempo, start and swing in one line; the start with so many digits. */
export function summaryLine(report: FullReport, words: ReportCatalogue, digits: number): string {
  const { alignment, swingRatio, asked } = report;
  const swing = swingRatio && asked.swingRatio !== null ? words.number(swingRatio.median, 2) : null;
  const start = words.number(alignment.startSeconds, digits);
  return words.report.summary(words.number(alignment.bpm, 1), start, swing);
}

/** The texts of a picture, as `drawReport` takes them. */
export function pictureText(report: FullReport, options: PictureOptions) {
  const words = wordsOf(options.language);
  return {
    title: options.title,
    summary: summaryLine(report, words, 1),
    sentences: teacherSentences(report, options),
    unheard: unheardSentences(report, options.language),
    words: { ...words, lateness: (ms: number) => sayLateness(ms, words) },
  };
}
