/** The lasting names of the open lesson that something refers to: an edit keeps them. */
import type { NamesInUse } from '@shedbook/routes';
import { useEffect, useState } from 'react';
import { readNamesInUse } from './api.ts';

const NONE: NamesInUse = { lesson: false, exercises: [] };

/** The names, as they were when the lesson was opened or the window last came to the front. */
export function useNamesInUse(id: string): NamesInUse {
  const [names, setNames] = useState(NONE);
  useEffect(() => {
    let gone = false;
    const look = () =>
      void readNamesInUse(id).then(
        (found) => !gone && setNames(found),
        // Not reached: what was known before holds.
        () => undefined,
      );
    look();
    window.addEventListener('focus', look);
    return () => {
      gone = true;
      window.removeEventListener('focus', look);
    };
  }, [id]);
  return names;
}
