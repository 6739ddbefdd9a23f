/** The catalogues of hearing oneself, takes, plan, log and care; loaded only where they are wanted. */

import { hearingMessages as english } from '../english/hearing.ts';
import { ENGLISH_SCREENS } from '../english/screens.ts';
import type { Language } from '../facts/say.ts';
import type { ScreenFact } from '../facts/sayable.ts';
import { hearingMessages as german } from '../german/hearing.ts';
import { GERMAN_SCREENS } from '../german/screens.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of hearing oneself, takes, plan, log and care. */
export type HearingWords = Spoken<typeof english>;

/** What is said of hearing in a language. */
export interface HearingCatalogue {
  readonly words: HearingWords;
  /** The language in which facts are said. */
  readonly language: Language<ScreenFact>;
}

/** The catalogues by language. */
export const HEARING: Readonly<Record<LanguageTag, HearingCatalogue>> = {
  en: { words: speak(english, ENGLISH_SCREENS.tongue), language: ENGLISH_SCREENS },
  de: { words: speak(german, GERMAN_SCREENS.tongue), language: GERMAN_SCREENS },
};
