/** The catalogues of the desk: English is there at once, every other is loaded when somebody reads it. */
import { deskMessages } from '../english/desk.ts';
import { ENGLISH } from '../english/english.ts';
import { ENGLISH_TONGUE } from '../english/tongue.ts';
import type { Language } from '../facts/say.ts';
import type { Sayable } from '../facts/sayable.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';
import { Translator } from '../said/said.ts';

/** The words of the desk. */
export type DeskWords = Spoken<typeof deskMessages>;

/** What the desk says in a language. */
export interface DeskCatalogue {
  readonly tag: LanguageTag;
  readonly words: DeskWords;
  /** The language in which facts are said. */
  readonly language: Language<Sayable>;
  /** What those rooms under the desk say, in the language, that say it in English sentences. */
  readonly said: (english: string) => string;
}

/** The desk in English. */
export const DESK_ENGLISH: DeskCatalogue = {
  tag: 'en',
  words: speak(deskMessages, ENGLISH_TONGUE),
  language: ENGLISH,
  said: (text) => text,
};

async function loadGerman(): Promise<DeskCatalogue> {
  const [{ deskMessages: german }, { GERMAN }, { SAID_GERMAN }] = await Promise.all([
    import('../german/desk.ts'),
    import('../german/german.ts'),
    import('../said/said-german.data.ts'),
  ]);
  const translator = new Translator(SAID_GERMAN);
  return {
    tag: 'de',
    words: speak(german, GERMAN.tongue),
    language: GERMAN,
    said: (text) => translator.say(text),
  };
}

/** The catalogue of the desk in a language. */
export async function loadDesk(tag: LanguageTag): Promise<DeskCatalogue> {
  return tag === 'de' ? loadGerman() : DESK_ENGLISH;
}
