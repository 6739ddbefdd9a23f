/** The words in use on the practice page, for components. */
import { type LanguageChoice, useCatalogue, WordsProvider, wordsContext } from '@shedbook/stand';
import { loadPractice, type PracticeCatalogue, type PracticeWords } from '@shedbook/words';
import type { ReactNode } from 'react';

/** Where components find them. */
export const PracticeContext = wordsContext<PracticeCatalogue>();

/** Gives words in the reader's language to what is inside, which waits until they are there. */
export function PracticeWordsProvider({ children }: { readonly children: ReactNode }) {
  return (
    <WordsProvider context={PracticeContext} load={loadPractice}>
      {children}
    </WordsProvider>
  );
}

/** The language in use, and a way to choose another. */
export function usePracticeLanguage(): PracticeCatalogue & LanguageChoice {
  return useCatalogue(PracticeContext);
}

/** The words in use. */
export function usePracticeWords(): PracticeWords {
  return usePracticeLanguage().words;
}
