/** Words that only some screens say, loaded with them. */
import {
  type LanguageTag,
  loadFacts,
  loadSchool,
  pickLanguage,
  type SchoolWords,
  type ScreenFact,
  say,
} from '@shedbook/words';
import { useEffect, useState } from 'react';
import { later, untilThere } from '../loading/later.ts';
import { useLanguage } from './words.tsx';

/** Has words come at leisure, in the language of the page, so that they are there without a server. @returns `load` */
export function atLeisure<Words>(load: (tag: LanguageTag) => Promise<Words>) {
  later(() => load(pickLanguage([document.documentElement.lang])));
  return load;
}

const loadOfSchool = atLeisure(loadSchool);
const loadOfHeard = atLeisure(loadFacts);

/** The words, once they are there. @param load the same function each time */
export function useLateWords<Words>(load: (tag: LanguageTag) => Promise<Words>): Words | null {
  const { tag } = useLanguage();
  const [words, setWords] = useState<Words | null>(null);
  useEffect(() => {
    let gone = false;
    void untilThere(() => load(tag)).then((loaded) => gone || setWords(() => loaded));
    return () => {
      gone = true;
    };
  }, [load, tag]);
  return words;
}

/** The words of a school and of signing in, once they are there. */
export function useSchoolWords(): SchoolWords | null {
  return useLateWords(loadOfSchool);
}

/** Says facts of what was heard as well, once it can. */
export function useSayHeard(): ((fact: ScreenFact) => string) | null {
  const language = useLateWords(loadOfHeard);
  return language && ((fact) => say(fact, language));
}
