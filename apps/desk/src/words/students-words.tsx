/** The words in use where students are spoken of, for components: those of the desk, and what is said of students alone. */

import { type LanguageChoice, useCatalogue, wordsContext } from '@shedbook/stand';
import {
  loadStudents,
  type ScreenFact,
  type StudentsCatalogue,
  type StudentsWords,
  say,
} from '@shedbook/words';
import type { ReactNode } from 'react';
import { atLeisure, useLateWords } from './late-words.ts';
import { useLanguage as useDeskLanguage } from './words.tsx';

const StudentsContext = wordsContext<StudentsCatalogue>();

const load = atLeisure(loadStudents);

/** The language in use with all that it says, and a way to choose another. */
export function useLanguage(): StudentsCatalogue & LanguageChoice {
  return useCatalogue(StudentsContext);
}

/** Gives words of students to what is inside, which waits until they are there. */
export function StudentsWordsProvider({ children }: { readonly children: ReactNode }) {
  const { choose } = useDeskLanguage();
  const catalogue = useLateWords(load);
  return catalogue && <StudentsContext value={{ ...catalogue, choose }}>{children}</StudentsContext>;
}

/** The words in use. */
export function useWords(): StudentsWords {
  return useLanguage().words;
}

/** Says facts in the language in use. */
export function useSay(): (fact: ScreenFact) => string {
  const { language } = useLanguage();
  return (fact) => say(fact, language);
}
