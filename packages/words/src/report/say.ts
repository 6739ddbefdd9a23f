/** From remarks to what a teacher says. */

import type { FullReport } from '@shedbook/core';
import { type Level, type Remark, type RemarkFact, remarksOn } from '@shedbook/judge';
import type { LanguageTag } from '../language/languages.ts';
import { english } from './english.data.ts';
import { german } from './german.data.ts';
import type { Sayings } from './remarks.ts';

const SAYINGS: Readonly<Record<LanguageTag, Sayings>> = { en: english, de: german };

/** How much a teacher says at once. */
export const SENTENCES = 3;

/** A remark as a sentence. */
export function sayRemark(remark: Remark, language: LanguageTag): string {
  // The catalogue has a saying for each kind that takes just that kind.
  const say = SAYINGS[language][remark.kind] as (fact: RemarkFact) => string;
  return say(remark);
}

/** For whom and in which language. */
export interface SayOptions {
  readonly level: Level;
  readonly language: LanguageTag;
}

/**
 * What a teacher would say about a take: three sentences at most, the strongest first.
 * For example: teacherSentences(report, { level: 'beginner', language: 'en' })[0]
 *   // 'The hi-hat foot on 4 is missing 7 of 8 times.'
 */
export function teacherSentences(report: FullReport, { level, language }: SayOptions): readonly string[] {
  const remarks = remarksOn(report, level).slice(0, SENTENCES);
  return remarks.map((remark) => sayRemark(remark, language));
}
