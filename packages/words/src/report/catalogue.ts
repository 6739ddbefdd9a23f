/** The report of a take in a language: its headings and figures, and the facts in it. */

import { ENGLISH_HEARD } from '../english/heard.ts';
import { report as english } from '../english/report.ts';
import type { Language } from '../facts/say.ts';
import type { HeardFact } from '../facts/sayable.ts';
import { GERMAN_HEARD } from '../german/heard.ts';
import { report as german } from '../german/report.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of a report. */
export type ReportWords = Spoken<typeof english>;

/** What is said of a take in a language. */
export interface ReportCatalogue {
  readonly tag: LanguageTag;
  readonly words: ReportWords;
  /** The language in which facts are said. */
  readonly language: Language<HeardFact>;
}

/** The catalogues by language. */
export const REPORTS: Readonly<Record<LanguageTag, ReportCatalogue>> = {
  en: { tag: 'en', words: speak(english, ENGLISH_HEARD.tongue), language: ENGLISH_HEARD },
  de: { tag: 'de', words: speak(german, GERMAN_HEARD.tongue), language: GERMAN_HEARD },
};
