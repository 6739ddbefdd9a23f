/** The words in use, for components. */
import { createContext, type ReactNode, useContext, useEffect, useState } from 'react';
import { I18nProvider } from 'react-aria-components';
import { remember, remembered } from '../shared/memory.ts';
import { english, type Words } from './english.ts';
import { german } from './german.ts';
import { Translator } from './said.ts';
import { SAID_GERMAN } from './said-german.data.ts';

/** Catalogues by language tag. */
export const CATALOGUES: Readonly<Record<string, Words>> = { en: english, de: german };

interface Language {
  readonly tag: string;
  readonly words: Words;
  readonly choose: (tag: string) => void;
}

const LanguageContext = createContext<Language>({ tag: 'en', words: english, choose: () => undefined });

const KEY = 'language';

/** The first of a reader's languages that there is a catalogue for; English where there is none. */
export function pickLanguage(wanted: readonly string[]): string {
  const found = wanted.map((tag) => tag.split('-')[0] as string).find((tag) => CATALOGUES[tag]);
  return found ?? 'en';
}

/** Gives words in the reader's language to what is inside. */
export function WordsProvider({ children }: { readonly children: ReactNode }) {
  const [tag, setTag] = useState(() => pickLanguage([remembered(KEY) ?? '', ...navigator.languages]));
  useEffect(() => {
    document.documentElement.lang = tag;
  }, [tag]);
  const choose = (next: string) => {
    remember(KEY, next);
    setTag(next);
  };
  return (
    <LanguageContext value={{ tag, words: CATALOGUES[tag] ?? english, choose }}>
      <I18nProvider locale={tag}>{children}</I18nProvider>
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

/** What the rooms under the studio say, by language; they speak English themselves. */
const TRANSLATORS: Readonly<Record<string, Translator>> = { de: new Translator(SAID_GERMAN) };

/** Says a phrase of the rooms under the studio in the language in use. */
export function useSaid(): (english: string) => string {
  const translator = TRANSLATORS[useContext(LanguageContext).tag];
  return (said) => translator?.say(said) ?? said;
}
