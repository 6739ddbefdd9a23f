/** The languages, and their catalogues: English is there at once, every other is loaded when somebody reads it. */

import { Translator } from '../said/said.ts';
import { english, type Words } from './english.ts';

/** Each language by its tag, named in itself. */
export const LANGUAGES: Readonly<Record<string, string>> = { en: 'English', de: 'Deutsch' };

/** The words of a language. */
export interface Catalogue {
  readonly tag: string;
  readonly words: Words;
  /** What the rooms under the desk say, in the language. */
  readonly say: (english: string) => string;
}

/** English: what the rooms under the desk say is English already. */
export const ENGLISH: Catalogue = { tag: 'en', words: english, say: (said) => said };

async function loadGerman(): Promise<Catalogue> {
  const [{ german }, { SAID_GERMAN }] = await Promise.all([
    import('./german.ts'),
    import('../said/said-german.data.ts'),
  ]);
  const translator = new Translator(SAID_GERMAN);
  return { tag: 'de', words: german, say: (said) => translator.say(said) };
}

/** The catalogue of a language; English where there is none. */
export async function loadCatalogue(tag: string): Promise<Catalogue> {
  return tag === 'de' ? loadGerman() : ENGLISH;
}

/** The first of a reader's languages that there is a catalogue for; English where there is none. */
export function pickLanguage(wanted: readonly string[]): string {
  const found = wanted.map((tag) => tag.split('-')[0] as string).find((tag) => LANGUAGES[tag]);
  return found ?? 'en';
}
