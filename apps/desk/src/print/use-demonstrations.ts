/** Exercises as the teacher plays them, kept with the lesson: listed, kept and erased. */
import type { KeptDemonstration } from '@shedbook/routes';
import { useEffect, useState } from 'react';
import { ask } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import type { Keeping } from '../document/lesson-document.ts';
import { useWords } from '../words/words.tsx';

/** What is kept, and what can be done. */
export interface Demonstrations {
  readonly kept: readonly KeptDemonstration[];
  /** Name of the performance that is being kept, or null. */
  readonly keeping: string | null;
  /** Why the last one was not kept, or null. */
  readonly why: string | null;
  /** Keeps a performance that was listened to. @returns whether it is kept */
  readonly keep: (performance: string) => Promise<boolean>;
  readonly erase: (demonstration: string) => void;
}

/** The demonstrations of a lesson. @param state of its keeping: which exercise one is of may change with every text that is kept */
export function useDemonstrations(id: string, state: Keeping): Demonstrations {
  const words = useWords();
  const [kept, show] = useState<readonly KeptDemonstration[]>([]);
  const [keeping, setKeeping] = useState<string | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  useEffect(() => {
    if (state !== 'kept') return undefined;
    let isGone = false;
    ask('listDemonstrations', { params: { id } }).then(
      (found) => (isGone ? undefined : show(found)),
      () => undefined,
    );
    return () => {
      isGone = true;
    };
  }, [id, state]);
  return {
    ...{ kept, keeping, why },
    keep: async (performance) => {
      setKeeping(performance);
      setWhy(null);
      try {
        show(await ask('keepDemonstration', { params: { id }, body: { performance } }));
        return true;
      } catch (error) {
        setWhy(wordsFor(error, words));
        return false;
      } finally {
        setKeeping(null);
      }
    },
    erase: (demonstration) => {
      show((before) => before.filter((each) => each.id !== demonstration));
      ask('eraseDemonstration', { params: { demonstration } }).catch((error: unknown) =>
        setWhy(wordsFor(error, words)),
      );
    },
  };
}
