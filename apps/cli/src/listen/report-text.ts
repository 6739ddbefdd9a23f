/** A report as lines of text: what a teacher would say, then the table. */
import { type Form, type FullReport, isGuess, type Voice, type VoiceReport } from '@shedbook/core';
import type { Judgement } from '@shedbook/judge';
import {
  type LanguageTag,
  REPORTS,
  type ReportWords,
  sayLateness,
  sayRounds,
  summaryLine,
  teacherSentences,
  unheardSentences,
} from '@shedbook/words';

const WIDTHS = { voice: 14, heard: 12, extra: 9, time: 16, spread: 10 } as const;

/** Figures of a voice that can hardly be told would only mislead. */
const NO_FIGURES = '–';

function voiceLine(voice: Voice, of: VoiceReport, report: FullReport, tag: LanguageTag): string {
  const { words, language } = REPORTS[tag];
  if (isGuess(report, voice)) return `  ${language.tongue.voices[voice].padEnd(WIDTHS.voice)}${NO_FIGURES}`;
  const level = report.balanceDb[voice];
  return [
    `  ${language.tongue.voices[voice].padEnd(WIDTHS.voice)}`,
    words.heardOf({ hits: of.hits, due: of.hits + of.missed }).padEnd(WIDTHS.heard),
    String(of.extra).padEnd(WIDTHS.extra),
    (of.hits > 0 ? sayLateness(of.offsetMs.median, words) : '').padEnd(WIDTHS.time),
    (of.hits > 0 ? words.spreadMs({ ms: of.offsetMs.spread }) : '').padEnd(WIDTHS.spread),
    level === undefined ? '' : words.decibels({ db: level }),
  ]
    .join('')
    .trimEnd();
}

function headLine({ voice, heard, extra, time, spread, level }: ReportWords): string {
  return [
    `  ${voice.padEnd(WIDTHS.voice)}`,
    heard.padEnd(WIDTHS.heard),
    extra.padEnd(WIDTHS.extra),
    time.padEnd(WIDTHS.time),
    spread.padEnd(WIDTHS.spread),
    level,
  ].join('');
}

/** The lines: the verdict with what to do and the figures, round by round where there were several, then the table. */
export function reportLines(
  report: FullReport,
  { judgement, form, tag }: { readonly judgement: Judgement; readonly form: Form; readonly tag: LanguageTag },
): readonly string[] {
  const { words, language } = REPORTS[tag];
  const rounds = sayRounds(judgement, REPORTS[tag]);
  const voices = Object.entries(report.voices) as [Voice, VoiceReport][];
  return [
    ...teacherSentences(judgement, language),
    ...(rounds.length > 0 ? ['', ...rounds] : []),
    '',
    summaryLine(report, words),
    words.form({ form: form.name, bars: judgement.task.bars }),
    headLine(words),
    ...voices.map(([voice, of]) => voiceLine(voice, of, report, tag)),
    ...unheardSentences(report, language),
  ];
}
