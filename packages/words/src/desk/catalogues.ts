/** The languages, and their catalogues: English is there at once, every other is loaded when somebody reads it. */

import { ENGLISH } from '../english/english.ts';
import type { Language } from '../facts/say.ts';
import type { Sayable } from '../facts/sayable.ts';
import { Translator } from '../said/said.ts';
import { english, type Words } from './english.ts';

/** Each language by its tag, named in itself. */
export const LANGUAGES: Readonly<Record<string, string>> = { en: 'English', de: 'Deutsch' };

/** The words of a language. */
export interface Catalogue {
  readonly tag: string;
  readonly words: Words;
  /** The language in which facts are said. */
  readonly language: Language<Sayable>;
  /** What those rooms under the desk say, in the language, that say it in English sentences. */
  readonly said: (english: string) => string;
}

/** English. */
export const ENGLISH_CATALOGUE: Catalogue = {
  tag: 'en',
  words: english,
  language: ENGLISH,
  said: (text) => text,
};

async function loadGerman(): Promise<Catalogue> {
  const [{ german }, { GERMAN }, { SAID_GERMAN }] = await Promise.all([
    import('./german.ts'),
    import('../german/german.ts'),
    import('../said/said-german.data.ts'),
  ]);
  const translator = new Translator(SAID_GERMAN);
  return { tag: 'de', words: german, language: GERMAN, said: (text) => translator.say(text) };
}

/** The catalogue of a language; English where there is none. */
export async function loadCatalogue(tag: string): Promise<Catalogue> {
  return tag === 'de' ? loadGerman() : ENGLISH_CATALOGUE;
}

/** The first of a reader's languages that there is a catalogue for; English where there is none. */
export function pickLanguage(wanted: readonly string[]): string {
  const found = wanted.map((tag) => tag.split('-')[0] as string).find((tag) => LANGUAGES[tag]);
  return found ?? 'en';
}
