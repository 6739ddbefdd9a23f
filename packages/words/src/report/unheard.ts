/**
 * What a recording cannot tell, in sentences.
 */
import { type FullReport, type UnheardFact, unheardFact } from '@shedbook/core';
import { ENGLISH_HEARD } from '../english/heard.ts';
import { type Language, say } from '../facts/say.ts';
import type { HeardFact } from '../facts/sayable.ts';

/**
 * What the recording cannot tell, in a language; of a report without reasons, its sentences as they were written.
 * For example: unheardSentences(report, GERMAN)[0]
 *   // 'Die Bassdrum war nicht zu hören: nicht gespielt oder zu leise für dieses Mikrofon.'
 */
export function unheardSentences(
  { unheard, notHeard }: Pick<FullReport, 'unheard' | 'notHeard'>,
  language: Language<HeardFact>,
): readonly string[] {
  return unheard?.map((one) => say<UnheardFact>(unheardFact(one), language)) ?? notHeard ?? [];
}

/** The report as it is written to a file: what could not be heard in English sentences too, as its readers expect. */
export function withSentences(report: FullReport): FullReport {
  return { ...report, notHeard: unheardSentences(report, ENGLISH_HEARD) };
}
