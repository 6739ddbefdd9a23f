/** What the command line says, by language. */
import { cli as english } from '../english/cli.ts';
import { help as englishHelp } from '../english/cli-help.ts';
import { durations as englishDurations } from '../english/durations.ts';
import { ENGLISH } from '../english/english.ts';
import { sizes as englishSizes } from '../english/sizes.ts';
import type { Language } from '../facts/say.ts';
import type { Sayable } from '../facts/sayable.ts';
import { cli as german } from '../german/cli.ts';
import { help as germanHelp } from '../german/cli-help.ts';
import { durations as germanDurations } from '../german/durations.ts';
import { GERMAN } from '../german/german.ts';
import { sizes as germanSizes } from '../german/sizes.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of the command line. */
export type CliWords = Spoken<typeof english> & {
  readonly sizes: Spoken<typeof englishSizes>;
  readonly durations: Spoken<typeof englishDurations>;
  readonly help: Spoken<typeof englishHelp>;
};

/** What the command line says in a language. */
export interface CliCatalogue {
  readonly tag: LanguageTag;
  readonly words: CliWords;
  /** The language in which facts are said. */
  readonly language: Language<Sayable>;
}

/** The catalogues by language. */
export const CLI: Readonly<Record<LanguageTag, CliCatalogue>> = {
  en: {
    tag: 'en',
    words: speak(
      { ...english, sizes: englishSizes, durations: englishDurations, help: englishHelp },
      ENGLISH.tongue,
    ),
    language: ENGLISH,
  },
  de: {
    tag: 'de',
    words: speak(
      { ...german, sizes: germanSizes, durations: germanDurations, help: germanHelp },
      GERMAN.tongue,
    ),
    language: GERMAN,
  },
};
