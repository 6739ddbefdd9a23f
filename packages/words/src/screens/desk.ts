/** The catalogues of the desk: English is there at once, every other is loaded when somebody reads it. */
import { deskMessages } from '../english/desk.ts';
import { ENGLISH_SCREENS } from '../english/screens.ts';
import { ENGLISH_TONGUE } from '../english/tongue.ts';
import type { Language } from '../facts/say.ts';
import type { ScreenFact } from '../facts/sayable.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of the desk. */
export type DeskWords = Spoken<typeof deskMessages>;

/** What the desk says in a language. */
export interface DeskCatalogue {
  readonly tag: LanguageTag;
  readonly words: DeskWords;
  /** The language in which facts are said. */
  readonly language: Language<ScreenFact>;
}

/** The desk in English. */
export const DESK_ENGLISH: DeskCatalogue = {
  tag: 'en',
  words: speak(deskMessages, ENGLISH_TONGUE),
  language: ENGLISH_SCREENS,
};

async function loadGerman(): Promise<DeskCatalogue> {
  const [{ deskMessages: german }, { GERMAN_SCREENS }] = await Promise.all([
    import('../german/desk.ts'),
    import('../german/screens.ts'),
  ]);
  return {
    tag: 'de',
    words: speak(german, GERMAN_SCREENS.tongue),
    language: GERMAN_SCREENS,
  };
}

/** The catalogue of the desk in a language. */
export async function loadDesk(tag: LanguageTag): Promise<DeskCatalogue> {
  return tag === 'de' ? loadGerman() : DESK_ENGLISH;
}
