/** The catalogues of the practice page, each loaded when somebody reads it: a browser is sent one language. */
import type { practiceMessages } from '../english/practice.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of the practice page. */
export type PracticeWords = Spoken<typeof practiceMessages>;

/** What the practice page says in a language. */
export interface PracticeCatalogue {
  readonly tag: LanguageTag;
  readonly words: PracticeWords;
}

async function loadEnglish(): Promise<PracticeCatalogue> {
  const [{ practiceMessages: english }, { ENGLISH_TONGUE }] = await Promise.all([
    import('../english/practice.ts'),
    import('../english/tongue.ts'),
  ]);
  return { tag: 'en', words: speak(english, ENGLISH_TONGUE) };
}

async function loadGerman(): Promise<PracticeCatalogue> {
  const [{ practiceMessages: german }, { GERMAN_TONGUE }] = await Promise.all([
    import('../german/practice.ts'),
    import('../german/tongue.ts'),
  ]);
  return { tag: 'de', words: speak(german, GERMAN_TONGUE) };
}

const LOADERS: Readonly<Record<LanguageTag, () => Promise<PracticeCatalogue>>> = {
  en: loadEnglish,
  de: loadGerman,
};

/** The catalogue of the practice page in a language. */
export function loadPractice(tag: LanguageTag): Promise<PracticeCatalogue> {
  return LOADERS[tag]();
}
