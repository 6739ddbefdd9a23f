/** The words in use, for components. */

import { remember, remembered } from '@shedbook/stand';
import {
  type Catalogue,
  ENGLISH_CATALOGUE,
  loadCatalogue,
  pickLanguage,
  type Sayable,
  say,
  type Words,
} from '@shedbook/words';
import { createContext, type ReactNode, useContext, useEffect, useState } from 'react';
import { I18nProvider } from 'react-aria-components';

interface Language extends Catalogue {
  readonly choose: (tag: string) => void;
}

const LanguageContext = createContext<Language>({ ...ENGLISH_CATALOGUE, choose: () => undefined });

const KEY = 'language';

/** Gives words in the reader's language to what is inside, which waits until they are there. */
export function WordsProvider({ children }: { readonly children: ReactNode }) {
  const [tag, setTag] = useState(() => pickLanguage([remembered(KEY) ?? '', ...navigator.languages]));
  const [catalogue, setCatalogue] = useState<Catalogue | null>(
    tag === ENGLISH_CATALOGUE.tag ? ENGLISH_CATALOGUE : null,
  );
  useEffect(() => {
    let gone = false;
    const show = (loaded: Catalogue) => {
      if (gone) return;
      document.documentElement.lang = loaded.tag;
      setCatalogue(loaded);
    };
    loadCatalogue(tag).then(show, () => show(ENGLISH_CATALOGUE));
    return () => {
      gone = true;
    };
  }, [tag]);
  if (!catalogue) return null;
  const choose = (next: string) => {
    remember(KEY, next);
    setTag(next);
  };
  return (
    <LanguageContext value={{ ...catalogue, choose }}>
      <I18nProvider locale={catalogue.tag}>{children}</I18nProvider>
    </LanguageContext>
  );
}

/** The words in use. */
export function useWords(): Words {
  return useContext(LanguageContext).words;
}

/** The language in use, and a way to choose another. */
export function useLanguage(): Language {
  return useContext(LanguageContext);
}

/** Says facts in the language in use. */
export function useSay(): (fact: Sayable) => string {
  const { language } = useContext(LanguageContext);
  return (fact) => say(fact, language);
}

/** Says, in the language in use, an English phrase of those rooms that do not yet state facts. */
export function useSaid(): (english: string) => string {
  return useContext(LanguageContext).said;
}
