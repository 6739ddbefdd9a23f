/** A report as lines of text: what a teacher would say, then the table. */
import type { Voice, VoiceReport } from '@shedbook/core';
import {
  type FullReport,
  type SayOptions,
  teacherSentences,
  unheardSentences,
  type Words,
  wordsOf,
} from '@shedbook/listen';

/** Offsets under this are not spoken of: nobody hears them in music. Source: Friberg & Sundberg 1995. */
const NOTICED_MS = 6;

const WIDTHS = { voice: 14, heard: 12, extra: 9, time: 16, spread: 10 } as const;

function signed(value: number, words: Words): string {
  const rounded = Math.round(value);
  return `${rounded > 0 ? '+' : ''}${words.number(rounded)}`;
}

function timeText(offsetMs: number, { report }: Words): string {
  const ms = Math.round(Math.abs(offsetMs));
  return ms < NOTICED_MS ? report.inTime : `${ms} ms ${offsetMs > 0 ? report.late : report.early}`;
}

function voiceLine(voice: Voice, of: VoiceReport, report: FullReport, words: Words): string {
  const level = report.balanceDb[voice];
  return [
    `  ${words.voices[voice].padEnd(WIDTHS.voice)}`,
    words.report.heardOf(of.hits, of.hits + of.missed).padEnd(WIDTHS.heard),
    String(of.extra).padEnd(WIDTHS.extra),
    (of.hits > 0 ? timeText(of.offsetMs.median, words) : '').padEnd(WIDTHS.time),
    (of.hits > 0 ? `±${Math.round(of.offsetMs.spread)} ms` : '').padEnd(WIDTHS.spread),
    level === undefined ? '' : `${signed(level, words)} dB`,
  ]
    .join('')
    .trimEnd();
}

function headLine({ report: { voice, heard, extra, time, spread, level } }: Words): string {
  return [
    `  ${voice.padEnd(WIDTHS.voice)}`,
    heard.padEnd(WIDTHS.heard),
    extra.padEnd(WIDTHS.extra),
    time.padEnd(WIDTHS.time),
    spread.padEnd(WIDTHS.spread),
    level,
  ].join('');
}

/** The lines. */
export function reportLines(report: FullReport, options: SayOptions): readonly string[] {
  const words = wordsOf(options.language);
  const { alignment, swingRatio } = report;
  const swing = swingRatio && report.asked.swingRatio !== null ? words.number(swingRatio.median, 2) : null;
  const voices = Object.entries(report.voices) as [Voice, VoiceReport][];
  return [
    ...teacherSentences(report, options),
    '',
    words.report.summary(words.number(alignment.bpm, 1), words.number(alignment.startSeconds, 2), swing),
    headLine(words),
    ...voices.map(([voice, of]) => voiceLine(voice, of, report, words)),
    ...unheardSentences(report, options.language),
  ];
}
