/** The catalogues of the teacher's books, each loaded when somebody reads it. */
import type { books } from '../english/books.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of the screen. */
export type BooksWords = Spoken<typeof books>;

const LOADERS: Readonly<Record<LanguageTag, () => Promise<BooksWords>>> = {
  en: async () => {
    const [{ books: english }, { ENGLISH_TONGUE }] = await Promise.all([
      import('../english/books.ts'),
      import('../english/tongue.ts'),
    ]);
    return speak(english, ENGLISH_TONGUE);
  },
  de: async () => {
    const [{ books: german }, { GERMAN_TONGUE }] = await Promise.all([
      import('../german/books.ts'),
      import('../german/tongue.ts'),
    ]);
    return speak(german, GERMAN_TONGUE);
  },
};

/** The words of the screen in a language. */
export function loadBooks(tag: LanguageTag): Promise<BooksWords> {
  return LOADERS[tag]();
}
