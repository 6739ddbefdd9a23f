/// <reference types="vite/client" />
/** Where the words of a count lie, as they were recorded. */
import english from '@shedbook/sound/spoken/english.flac?url';
import german from '@shedbook/sound/spoken/german.flac?url';
import type { LanguageTag } from '@shedbook/words';

const ADDRESSES: Readonly<Record<LanguageTag, string>> = { en: english, de: german };

/** The file of a language's words. @throws TypeError where it does not come */
export async function fetchSpoken(language: LanguageTag): Promise<ArrayBuffer> {
  const response = await fetch(ADDRESSES[language]);
  return response.arrayBuffer();
}
