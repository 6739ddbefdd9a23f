/** What a page says before it is one, in every language: no program runs there yet that could choose. */
import { oldBrowser as english } from '../english/old-browser.ts';
import { oldBrowser as german } from '../german/old-browser.ts';
import type { LanguageTag } from '../language/languages.ts';

/** What is said, as messages with the versions in their places. */
export type OldBrowserWords = TextsOf<typeof english>;

type TextsOf<Texts> = {
  readonly [Key in keyof Texts]: Texts[Key] extends string ? string : TextsOf<Texts[Key]>;
};

/** The texts of each language. */
export const OLD_BROWSER: Readonly<Record<LanguageTag, OldBrowserWords>> = { en: english, de: german };
