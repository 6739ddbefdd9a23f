/** Words in the reader's language for all components of a product. */
import { type LanguageTag, pickLanguage } from '@shedbook/words';
import { type Context, createContext, type ReactNode, useContext, useEffect, useState } from 'react';
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

/** The language for those whose own cannot be loaded. */
const COMMON: LanguageTag = 'en';

/** The catalogue of a language once it is loaded; until then the last one, or null. */
function useLoaded<C extends Catalogue>(tag: LanguageTag, load: (tag: LanguageTag) => Promise<C>) {
  const [catalogue, setCatalogue] = useState<C | null>(null);
  useEffect(() => {
    let gone = false;
    const show = (loaded: C) => {
      if (gone) return;
      document.documentElement.lang = loaded.tag;
      setCatalogue(loaded);
    };
    load(tag).then(show, () => load(COMMON).then(show));
    return () => {
      gone = true;
    };
  }, [tag, load]);
  return catalogue;
}

/** Where components find the catalogue in use, and a way to choose another; null outside a provider. */
export type WordsContext<C> = Context<(C & LanguageChoice) | null>;

/** A context of a product's catalogues. */
export function wordsContext<C extends Catalogue>(): WordsContext<C> {
  return createContext<(C & LanguageChoice) | null>(null);
}

/** The catalogue in use, and a way to choose another. @throws RangeError outside a provider */
export function useCatalogue<C extends Catalogue>(context: WordsContext<C>): C & LanguageChoice {
  const catalogue = useContext(context);
  if (!catalogue) throw new RangeError('Internal error: nobody provided words');
  return catalogue;
}

interface WordsProviderProps<C> {
  readonly context: WordsContext<C>;
  /** Loads the catalogue of a language: only the reader's own is sent to a browser. */
  readonly load: (tag: LanguageTag) => Promise<C>;
  readonly children: ReactNode;
}

/** Gives words in the reader's language to what is inside, which waits until they are there. */
export function WordsProvider<C extends Catalogue>({
  context: Words,
  load,
  children,
}: WordsProviderProps<C>) {
  const [tag, setTag] = useState(() => pickLanguage([remembered(KEY) ?? '', ...navigator.languages]));
  const catalogue = useLoaded(tag, load);
  if (!catalogue) return null;
  const choose = (next: string) => {
    remember(KEY, next);
    setTag(pickLanguage([next]));
  };
  return <Words value={{ ...catalogue, choose }}>{children}</Words>;
}
