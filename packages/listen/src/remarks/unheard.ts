/**
 * What a recording cannot tell, in sentences; the report's own list is in English, as its readers expect.
 */
import type { FullReport, Measured, Unheard } from '../report/take-report.ts';
import { type ReportLanguage, wordsOf } from './words.ts';

/** A reason as a sentence. */
export function sayUnheard(unheard: Unheard, language: ReportLanguage): string {
  // The catalogue has a saying for each reason that takes just that reason.
  const say = wordsOf(language).unheard[unheard.reason] as (unheard: Unheard) => string;
  return say(unheard);
}

/**
 * What the recording cannot tell, in a language; of a report without reasons, its sentences as they were written.
 * @example unheardSentences(report, 'de')[0]
 *   // 'Die Bassdrum war nicht zu hören: nicht gespielt oder zu leise für dieses Mikrofon.'
 */
export function unheardSentences(
  { unheard, notHeard }: Pick<FullReport, 'unheard' | 'notHeard'>,
  language: ReportLanguage,
): readonly string[] {
  return unheard?.map((one) => sayUnheard(one, language)) ?? notHeard;
}

/** The report of what was measured, with what could not be. */
export function withUnheard(measured: Measured, unheard: readonly Unheard[]): FullReport {
  return { ...measured, notHeard: unheard.map((one) => sayUnheard(one, 'en')), unheard };
}
