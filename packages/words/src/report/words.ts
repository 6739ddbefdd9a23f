/** The languages that remarks and reports are said in: one catalogue a language, all of the same shape. */
import type { ReportCatalogue } from './catalogue.ts';
import { english } from './english.data.ts';
import { german } from './german.data.ts';

/** Languages of a report. */
export const REPORT_LANGUAGES = ['en', 'de'] as const;
/** A language that remarks are made in. */
export type ReportLanguage = (typeof REPORT_LANGUAGES)[number];

const WORDS: Readonly<Record<ReportLanguage, ReportCatalogue>> = { en: english, de: german };

/** The words of a language. */
export function wordsOf(language: ReportLanguage): ReportCatalogue {
  return WORDS[language];
}
