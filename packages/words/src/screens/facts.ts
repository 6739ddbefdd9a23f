/** The sentences of a language, loaded when somebody first needs them: a browser has other things to fetch first. */

import type { Language } from '../facts/say.ts';
import type { Sayable, ScreenFact } from '../facts/sayable.ts';
import type { LanguageTag } from '../language/languages.ts';

/** The language in which facts are said. */
export async function loadFacts(tag: LanguageTag): Promise<Language<ScreenFact>> {
  if (tag === 'de') return (await import('../german/screens.ts')).GERMAN_SCREENS;
  return (await import('../english/screens.ts')).ENGLISH_SCREENS;
}

/** The language in which facts of files from other programs are said too. */
export async function loadFileFacts(tag: LanguageTag): Promise<Language<Sayable>> {
  if (tag === 'de') return (await import('../german/german.ts')).GERMAN;
  return (await import('../english/english.ts')).ENGLISH;
}
