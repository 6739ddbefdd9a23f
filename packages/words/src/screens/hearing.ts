/** The catalogues of hearing oneself, takes, plan, log and care; loaded only where they are wanted. */
import type { PlaceFact } from '@shedbook/core';
import { places as englishPlaces } from '../english/facts/places.ts';
import { hearingMessages as english } from '../english/hearing.ts';
import { ENGLISH_TONGUE } from '../english/tongue.ts';
import type { Language } from '../facts/say.ts';
import { places as germanPlaces } from '../german/facts/places.ts';
import { hearingMessages as german } from '../german/hearing.ts';
import { GERMAN_TONGUE } from '../german/tongue.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of hearing oneself, takes, plan, log and care. */
export type HearingWords = Spoken<typeof english>;

/** What is said of hearing in a language. */
export interface HearingCatalogue {
  readonly words: HearingWords;
  /** The language in which places are said. */
  readonly language: Language<PlaceFact>;
}

/** The catalogues by language. */
export const HEARING: Readonly<Record<LanguageTag, HearingCatalogue>> = {
  en: {
    words: speak(english, ENGLISH_TONGUE),
    language: { tongue: ENGLISH_TONGUE, sentences: englishPlaces },
  },
  de: { words: speak(german, GERMAN_TONGUE), language: { tongue: GERMAN_TONGUE, sentences: germanPlaces } },
};
