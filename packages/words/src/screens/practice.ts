/** The catalogues of the practice page: English is there at once, every other is loaded when somebody reads it. */
import { practiceMessages } from '../english/practice.ts';
import { ENGLISH_TONGUE } from '../english/tongue.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of the practice page. */
export type PracticeWords = Spoken<typeof practiceMessages>;

/** What the practice page says in a language. */
export interface PracticeCatalogue {
  readonly tag: LanguageTag;
  readonly words: PracticeWords;
}

/** The practice page in English. */
export const PRACTICE_ENGLISH: PracticeCatalogue = {
  tag: 'en',
  words: speak(practiceMessages, ENGLISH_TONGUE),
};

async function loadGerman(): Promise<PracticeCatalogue> {
  const [german, { GERMAN_TONGUE }] = await Promise.all([
    import('../german/practice.ts'),
    import('../german/tongue.ts'),
  ]);
  return { tag: 'de', words: speak(german.practiceMessages, GERMAN_TONGUE) };
}

/** The catalogue of the practice page in a language. */
export async function loadPractice(tag: LanguageTag): Promise<PracticeCatalogue> {
  return tag === 'de' ? loadGerman() : PRACTICE_ENGLISH;
}
