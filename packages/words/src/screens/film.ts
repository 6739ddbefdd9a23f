/** What lesson videos show and say, by language: captions are written in all of them. */
import { film as english } from '../english/film.ts';
import { ENGLISH_TONGUE } from '../english/tongue.ts';
import { film as german } from '../german/film.ts';
import { GERMAN_TONGUE } from '../german/tongue.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of a lesson video. */
export type FilmWords = Spoken<typeof english>;

/** What a lesson video says in each language. */
export const FILM_WORDS: Readonly<Record<LanguageTag, FilmWords>> = {
  en: speak(english, ENGLISH_TONGUE),
  de: speak(german, GERMAN_TONGUE),
};
