/** The words in use in the practice room, for components. */

import { remember, remembered } from '@shedbook/stand';
import { type PracticeWords, practiceEnglish, practiceGerman } from '@shedbook/words';
import { createContext, type ReactNode, useContext, useEffect, useState } from 'react';

/** Catalogues by language tag. */
export const PRACTICE_CATALOGUES: Readonly<Record<string, PracticeWords>> = {
  en: practiceEnglish,
  de: practiceGerman,
};

interface Language {
  readonly tag: string;
  readonly words: PracticeWords;
  readonly choose: (tag: string) => void;
}

const LanguageContext = createContext<Language>({
  tag: 'en',
  words: practiceEnglish,
  choose: () => undefined,
});

const KEY = 'language';

function pickLanguage(wanted: readonly string[]): string {
  const tags = wanted.map((tag) => tag.split('-')[0] as string);
  return tags.find((tag) => PRACTICE_CATALOGUES[tag]) ?? 'en';
}

/** Gives words in the reader's language to what is inside. */
export function PracticeWordsProvider({ children }: { readonly children: ReactNode }) {
  const [tag, setTag] = useState(() => pickLanguage([remembered(KEY) ?? '', ...navigator.languages]));
  useEffect(() => {
    document.documentElement.lang = tag;
  }, [tag]);
  const choose = (next: string) => {
    remember(KEY, next);
    setTag(next);
  };
  const words = PRACTICE_CATALOGUES[tag] ?? practiceEnglish;
  return <LanguageContext value={{ tag, words, choose }}>{children}</LanguageContext>;
}

/** The words in use. */
export function usePracticeWords(): PracticeWords {
  return useContext(LanguageContext).words;
}

/** The language in use, and a way to choose another. */
export function usePracticeLanguage(): Language {
  return useContext(LanguageContext);
}
