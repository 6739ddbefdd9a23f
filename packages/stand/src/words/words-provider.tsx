/** Words in the reader's language for all components of a product. */
import { type LanguageTag, pickLanguage } from '@shedbook/words';
import { type Context, createContext, type ReactNode, useEffect, useState } from 'react';
import { remember, remembered } from '../device/memory.ts';

/** What a product says in a language. */
interface Catalogue {
  readonly tag: LanguageTag;
}

/** How a reader changes the language. */
export interface LanguageChoice {
  /** Changes it to the language of a tag, and keeps that for the next visit. */
  readonly choose: (tag: string) => void;
}

const KEY = 'language';

/** The catalogue of a language once it is loaded, or null; the first one where it cannot be. */
function useLoaded<C extends Catalogue>(tag: LanguageTag, first: C, load: (tag: LanguageTag) => Promise<C>) {
  const [catalogue, setCatalogue] = useState<C | null>(tag === first.tag ? first : null);
  useEffect(() => {
    let gone = false;
    const show = (loaded: C) => {
      if (gone) return;
      document.documentElement.lang = loaded.tag;
      setCatalogue(loaded);
    };
    load(tag).then(show, () => show(first));
    return () => {
      gone = true;
    };
  }, [tag, first, load]);
  return catalogue;
}

/** Where components find the catalogue in use, and a way to choose another. */
export type WordsContext<C> = Context<C & LanguageChoice>;

/** A context of a product's catalogues; `first` stands in it until a provider is there. */
export function wordsContext<C extends Catalogue>(first: C): WordsContext<C> {
  return createContext<C & LanguageChoice>({ ...first, choose: () => undefined });
}

interface WordsProviderProps<C> {
  readonly context: WordsContext<C>;
  /** The catalogue that is there at once. */
  readonly first: C;
  /** Loads any other. */
  readonly load: (tag: LanguageTag) => Promise<C>;
  readonly children: ReactNode;
}

/** Gives words in the reader's language to what is inside, which waits until they are there. */
export function WordsProvider<C extends Catalogue>({
  context: Words,
  first,
  load,
  children,
}: WordsProviderProps<C>) {
  const [tag, setTag] = useState(() => pickLanguage([remembered(KEY) ?? '', ...navigator.languages]));
  const catalogue = useLoaded(tag, first, load);
  if (!catalogue) return null;
  const choose = (next: string) => {
    remember(KEY, next);
    setTag(pickLanguage([next]));
  };
  return <Words value={{ ...catalogue, choose }}>{children}</Words>;
}
