/** The sentences of a language, loaded when somebody first needs them: a browser has other things to fetch first. */

import type { Language } from '../facts/say.ts';
import type { Sayable } from '../facts/sayable.ts';
import type { LanguageTag } from '../language/languages.ts';

/** The language in which facts are said. */
export async function loadFacts(tag: LanguageTag): Promise<Language<Sayable>> {
  if (tag === 'de') return (await import('../german/german.ts')).GERMAN;
  return (await import('../english/english.ts')).ENGLISH;
}
