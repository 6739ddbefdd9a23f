/** Words that only some screens say, loaded with them. */
import { type LanguageTag, loadSchool, type SchoolWords } from '@shedbook/words';
import { useEffect, useState } from 'react';
import { useLanguage } from './words.tsx';

/** The words, once they are there. @param load the same function each time */
export function useLateWords<Words>(load: (tag: LanguageTag) => Promise<Words>): Words | null {
  const { tag } = useLanguage();
  const [words, setWords] = useState<Words | null>(null);
  useEffect(() => {
    void load(tag).then((loaded) => setWords(() => loaded));
  }, [load, tag]);
  return words;
}

/** The words of a school and of signing in, once they are there. */
export function useSchoolWords(): SchoolWords | null {
  return useLateWords(loadSchool);
}
