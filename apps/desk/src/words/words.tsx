/** The words in use, for components. */

import { type LanguageChoice, useCatalogue, WordsProvider, wordsContext } from '@shedbook/stand';
import { type DeskCatalogue, type DeskFact, type DeskWords, loadDesk, say } from '@shedbook/words';
import type { ReactNode } from 'react';

const DeskContext = wordsContext<DeskCatalogue>();

/** The language in use with all that it says, and a way to choose another. */
export function useLanguage(): DeskCatalogue & LanguageChoice {
  return useCatalogue(DeskContext);
}

/** Gives words in the reader's language to what is inside, which waits until they are there. */
export function DeskWordsProvider({ children }: { readonly children: ReactNode }) {
  return (
    <WordsProvider context={DeskContext} load={loadDesk}>
      {children}
    </WordsProvider>
  );
}

/** The words in use. */
export function useWords(): DeskWords {
  return useLanguage().words;
}

/** Says facts in the language in use. */
export function useSay(): (fact: DeskFact) => string {
  const { language } = useLanguage();
  return (fact) => say(fact, language);
}
