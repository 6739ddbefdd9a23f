/** A report as lines of text: what a teacher would say, then the table. */
import type { FullReport, Voice, VoiceReport } from '@shedbook/core';
import {
  type ReportCatalogue,
  type SayOptions,
  sayLateness,
  summaryLine,
  teacherSentences,
  unheardSentences,
  wordsOf,
} from '@shedbook/words';

const WIDTHS = { voice: 14, heard: 12, extra: 9, time: 16, spread: 10 } as const;

function signed(value: number, words: ReportCatalogue): string {
  const rounded = Math.round(value);
  return `${rounded > 0 ? '+' : ''}${words.number(rounded)}`;
}

function voiceLine(voice: Voice, of: VoiceReport, report: FullReport, words: ReportCatalogue): string {
  const level = report.balanceDb[voice];
  return [
    `  ${words.voices[voice].padEnd(WIDTHS.voice)}`,
    words.report.heardOf(of.hits, of.hits + of.missed).padEnd(WIDTHS.heard),
    String(of.extra).padEnd(WIDTHS.extra),
    (of.hits > 0 ? sayLateness(of.offsetMs.median, words) : '').padEnd(WIDTHS.time),
    (of.hits > 0 ? `±${Math.round(of.offsetMs.spread)} ms` : '').padEnd(WIDTHS.spread),
    level === undefined ? '' : `${signed(level, words)} dB`,
  ]
    .join('')
    .trimEnd();
}

function headLine({ report: { voice, heard, extra, time, spread, level } }: ReportCatalogue): string {
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
  const voices = Object.entries(report.voices) as [Voice, VoiceReport][];
  return [
    ...teacherSentences(report, options),
    '',
    summaryLine(report, words, 2),
    headLine(words),
    ...voices.map(([voice, of]) => voiceLine(voice, of, report, words)),
    ...unheardSentences(report, options.language),
  ];
}
