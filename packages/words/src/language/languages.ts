/** The languages there are. */

/** Each language by its tag, named in itself. */
export const LANGUAGES = { en: 'English', de: 'Deutsch' } as const;

/** The tag of a language that there are catalogues of. */
export type LanguageTag = keyof typeof LANGUAGES;

/** The tags of all languages. */
export const LANGUAGE_TAGS = Object.keys(LANGUAGES) as readonly LanguageTag[];

function isLanguage(tag: string): tag is LanguageTag {
  return Object.hasOwn(LANGUAGES, tag);
}

/** The first of a reader's languages that there is a catalogue for; English where there is none. */
export function pickLanguage(wanted: readonly string[]): LanguageTag {
  return wanted.map((tag) => tag.split('-')[0] as string).find(isLanguage) ?? 'en';
}
