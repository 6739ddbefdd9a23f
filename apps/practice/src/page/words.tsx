/** The words in use on the practice page, for components. */
import { type LanguageChoice, WordsProvider, wordsContext } from '@shedbook/stand';
import { loadPractice, PRACTICE_ENGLISH, type PracticeCatalogue, type PracticeWords } from '@shedbook/words';
import { type ReactNode, useContext } from 'react';

/** Where components find them. */
export const PracticeContext = wordsContext(PRACTICE_ENGLISH);

/** Gives words in the reader's language to what is inside, which waits until they are there. */
export function PracticeWordsProvider({ children }: { readonly children: ReactNode }) {
  return (
    <WordsProvider context={PracticeContext} first={PRACTICE_ENGLISH} load={loadPractice}>
      {children}
    </WordsProvider>
  );
}

/** The language in use, and a way to choose another. */
export function usePracticeLanguage(): PracticeCatalogue & LanguageChoice {
  return useContext(PracticeContext);
}

/** The words in use. */
export function usePracticeWords(): PracticeWords {
  return usePracticeLanguage().words;
}
