/**
 * What a recording cannot tell, in sentences.
 */
import type { FullReport, Unheard } from '@shedbook/core';
import { type ReportLanguage, wordsOf } from './words.ts';

/** A reason as a sentence. */
export function sayUnheard(unheard: Unheard, language: ReportLanguage): string {
  // The catalogue has a saying for each reason that takes just that reason.
  const say = wordsOf(language).unheard[unheard.reason] as (unheard: Unheard) => string;
  return say(unheard);
}

/**
 * What the recording cannot tell, in a language; of a report without reasons, its sentences as they were written.
 * For example: unheardSentences(report, 'de')[0]
 *   // 'Die Bassdrum war nicht zu hören: nicht gespielt oder zu leise für dieses Mikrofon.'
 */
export function unheardSentences(
  { unheard, notHeard }: Pick<FullReport, 'unheard' | 'notHeard'>,
  language: ReportLanguage,
): readonly string[] {
  return unheard?.map((one) => sayUnheard(one, language)) ?? notHeard ?? [];
}

/** The report as it is written to a file: what could not be heard in English sentences too, as its readers expect. */
export function withSentences(report: FullReport): FullReport {
  return { ...report, notHeard: unheardSentences(report, 'en') };
}
