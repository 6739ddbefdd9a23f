/** The catalogues of hearing oneself, takes, plan, log and care; loaded only where they are wanted. */

import { ENGLISH_HEARD } from '../english/heard.ts';
import { hearingMessages as english } from '../english/hearing.ts';
import type { Language } from '../facts/say.ts';
import type { HeardFact } from '../facts/sayable.ts';
import { GERMAN_HEARD } from '../german/heard.ts';
import { hearingMessages as german } from '../german/hearing.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of hearing oneself, takes, plan, log and care. */
export type HearingWords = Spoken<typeof english>;

/** What is said of hearing in a language. */
export interface HearingCatalogue {
  readonly words: HearingWords;
  /** The language in which facts are said. */
  readonly language: Language<HeardFact>;
}

/** The catalogues by language. */
export const HEARING: Readonly<Record<LanguageTag, HearingCatalogue>> = {
  en: { words: speak(english, ENGLISH_HEARD.tongue), language: ENGLISH_HEARD },
  de: { words: speak(german, GERMAN_HEARD.tongue), language: GERMAN_HEARD },
};
