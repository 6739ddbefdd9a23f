/** The sentences of a language, loaded when somebody first needs them: a browser has other things to fetch first. */

import type { Language } from '../facts/say.ts';
import type { Sayable, ScreenFact } from '../facts/sayable.ts';
import type { LanguageTag } from '../language/languages.ts';

const FACTS: Readonly<Record<LanguageTag, () => Promise<Language<ScreenFact>>>> = {
  en: async () => (await import('../english/screens.ts')).ENGLISH_SCREENS,
  de: async () => (await import('../german/screens.ts')).GERMAN_SCREENS,
};

const FILE_FACTS: Readonly<Record<LanguageTag, () => Promise<Language<Sayable>>>> = {
  en: async () => (await import('../english/english.ts')).ENGLISH,
  de: async () => (await import('../german/german.ts')).GERMAN,
};

/** The language in which facts are said. */
export function loadFacts(tag: LanguageTag): Promise<Language<ScreenFact>> {
  return FACTS[tag]();
}

/** The language in which facts of files from other programs are said too. */
export function loadFileFacts(tag: LanguageTag): Promise<Language<Sayable>> {
  return FILE_FACTS[tag]();
}
