/** Everything that the picture of a report says, in one language. */
import type { FullReport } from '@shedbook/core';
import type { PictureText } from '@shedbook/engrave/report';
import { DISPLACEMENT, type Judgement } from '@shedbook/judge';
import type { LanguageTag } from '../language/languages.ts';
import { REPORTS, type ReportWords } from './catalogue.ts';
import { sayRounds, teacherSentences } from './say.ts';
import { unheardSentences } from './unheard.ts';

/** How early or late something is, in ms; what nobody hears is in time. */
export function sayLateness(offsetMs: number, words: ReportWords): string {
  const ms = Math.round(Math.abs(offsetMs));
  if (ms < DISPLACEMENT.leastMs) return words.inTime;
  return offsetMs > 0 ? words.late({ ms }) : words.early({ ms });
}

/** What came of the take, in which language it is said, and what the page is called. */
export interface PictureOptions {
  readonly judgement: Judgement;
  readonly language: LanguageTag;
  readonly title: string;
}

/** From this ratio on, long part by short part, swing is told also where none is asked: nearer to a triplet's than to even. */
const TOLD_RATIO = 1.4;

/** Tempo, start and swing in one line. */
export function summaryLine(report: FullReport, words: ReportWords): string {
  const { alignment, swingRatio, asked } = report;
  const { bpm, startSeconds } = alignment;
  const isTold = asked.swingRatio !== null || (swingRatio?.median ?? 1) >= TOLD_RATIO;
  if (!swingRatio || !isTold) return words.summary({ bpm, startSeconds });
  return words.summarySwung({ bpm, startSeconds, ratio: swingRatio.median });
}

/** The texts of a picture, as `drawReport` takes them. */
export function pictureText(report: FullReport, options: PictureOptions): PictureText {
  const { words, language } = REPORTS[options.language];
  return {
    title: options.title,
    summary: summaryLine(report, words),
    sentences: [
      ...teacherSentences(options.judgement, language),
      ...sayRounds(options.judgement, REPORTS[options.language]),
    ],
    unheard: unheardSentences(report, language),
    words: { ...words, voices: language.tongue.voices, lateness: (ms) => sayLateness(ms, words) },
  };
}
