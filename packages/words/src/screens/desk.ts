/** The catalogues of the desk, each loaded when somebody reads it: a browser is sent one language. */
import type { deskMessages } from '../english/desk.ts';
import type { Language } from '../facts/say.ts';
import type { DeskFact } from '../facts/sayable.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of the desk. */
export type DeskWords = Spoken<typeof deskMessages>;

/** What the desk says in a language. */
export interface DeskCatalogue {
  readonly tag: LanguageTag;
  readonly words: DeskWords;
  /** The language in which facts are said. */
  readonly language: Language<DeskFact>;
}

async function loadEnglish(): Promise<DeskCatalogue> {
  const [{ deskMessages: english }, { ENGLISH_DESK }] = await Promise.all([
    import('../english/desk.ts'),
    import('../english/desk-facts.ts'),
  ]);
  return { tag: 'en', words: speak(english, ENGLISH_DESK.tongue), language: ENGLISH_DESK };
}

async function loadGerman(): Promise<DeskCatalogue> {
  const [{ deskMessages: german }, { GERMAN_DESK }] = await Promise.all([
    import('../german/desk.ts'),
    import('../german/desk-facts.ts'),
  ]);
  return { tag: 'de', words: speak(german, GERMAN_DESK.tongue), language: GERMAN_DESK };
}

const LOADERS: Readonly<Record<LanguageTag, () => Promise<DeskCatalogue>>> = {
  en: loadEnglish,
  de: loadGerman,
};

/** The catalogue of the desk in a language. */
export function loadDesk(tag: LanguageTag): Promise<DeskCatalogue> {
  return LOADERS[tag]();
}
