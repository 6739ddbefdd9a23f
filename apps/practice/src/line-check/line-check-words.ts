/** The words of the line check, once they are there. */
import { type LineCheckWords, loadLineCheck } from '@shedbook/words';
import { useEffect, useState } from 'react';
import { usePracticeLanguage } from '../page/words.tsx';

/** The words in the reader's language; null until they have come. */
export function useLineCheckWords(): LineCheckWords | null {
  const { tag } = usePracticeLanguage();
  const [words, setWords] = useState<LineCheckWords | null>(null);
  useEffect(() => {
    loadLineCheck(tag).then(
      (loaded) => setWords(() => loaded),
      () => undefined,
    );
  }, [tag]);
  return words;
}
