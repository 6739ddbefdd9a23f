/**
 * What a recording cannot tell, in sentences, and what it was heard with.
 */
import { type FullReport, type UnheardFact, unheardFact } from '@shedbook/core';
import type { LineCheckFact } from '@shedbook/listen';
import { ENGLISH_HEARD } from '../english/heard.ts';
import { type Language, say } from '../facts/say.ts';
import type { HeardFact } from '../facts/sayable.ts';

/** What the recording cannot tell. */
function untold(
  { unheard, notHeard }: Pick<FullReport, 'unheard' | 'notHeard'>,
  language: Language<HeardFact>,
): readonly string[] {
  return unheard?.map((one) => say<UnheardFact>(unheardFact(one), language)) ?? notHeard ?? [];
}

/**
 * What the recording cannot tell, in a language, and the line check that it was heard with; of a report without reasons, its sentences as they were written.
 * For example: unheardSentences(report, GERMAN)[0]
 *   // 'Die Bassdrum war nicht zu hören: nicht gespielt oder zu leise für dieses Mikrofon.'
 */
export function unheardSentences(
  report: Pick<FullReport, 'unheard' | 'notHeard' | 'lineCheck'>,
  language: Language<HeardFact>,
): readonly string[] {
  const { lineCheck: name } = report;
  const checked: LineCheckFact | null = name === undefined ? null : { fact: 'heard-with-line-check', name };
  return [...untold(report, language), ...(checked ? [say(checked, language)] : [])];
}

/** The report as it is written to a file: what could not be heard in English sentences too, as its readers expect. */
export function withSentences(report: FullReport): FullReport {
  return { ...report, notHeard: untold(report, ENGLISH_HEARD) };
}
