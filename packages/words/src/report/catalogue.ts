/** The report of a take in a language: its headings and figures, and the facts in it. */
import { report as english } from '../english/report.ts';
import { ENGLISH_SCREENS } from '../english/screens.ts';
import type { Language } from '../facts/say.ts';
import type { ScreenFact } from '../facts/sayable.ts';
import { report as german } from '../german/report.ts';
import { GERMAN_SCREENS } from '../german/screens.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of a report. */
export type ReportWords = Spoken<typeof english>;

/** What is said of a take in a language. */
export interface ReportCatalogue {
  readonly tag: LanguageTag;
  readonly words: ReportWords;
  /** The language in which facts are said. */
  readonly language: Language<ScreenFact>;
}

/** The catalogues by language. */
export const REPORTS: Readonly<Record<LanguageTag, ReportCatalogue>> = {
  en: { tag: 'en', words: speak(english, ENGLISH_SCREENS.tongue), language: ENGLISH_SCREENS },
  de: { tag: 'de', words: speak(german, GERMAN_SCREENS.tongue), language: GERMAN_SCREENS },
};
