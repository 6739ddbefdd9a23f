/** The catalogues of the desk, each loaded when somebody reads it: a browser is sent one language. */
import type { deskMessages } from '../english/desk.ts';
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

async function loadEnglish(): Promise<DeskCatalogue> {
  const [{ deskMessages: english }, { ENGLISH_SCREENS }] = await Promise.all([
    import('../english/desk.ts'),
    import('../english/screens.ts'),
  ]);
  return { tag: 'en', words: speak(english, ENGLISH_SCREENS.tongue), language: ENGLISH_SCREENS };
}

async function loadGerman(): Promise<DeskCatalogue> {
  const [{ deskMessages: german }, { GERMAN_SCREENS }] = await Promise.all([
    import('../german/desk.ts'),
    import('../german/screens.ts'),
  ]);
  return { tag: 'de', words: speak(german, GERMAN_SCREENS.tongue), language: GERMAN_SCREENS };
}

const LOADERS: Readonly<Record<LanguageTag, () => Promise<DeskCatalogue>>> = {
  en: loadEnglish,
  de: loadGerman,
};

/** The catalogue of the desk in a language. */
export function loadDesk(tag: LanguageTag): Promise<DeskCatalogue> {
  return LOADERS[tag]();
}
