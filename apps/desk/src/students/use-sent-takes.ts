/** Takes that students sent: looked for when somebody comes back to the window, and answered. */
import type { SentTake, TakeOpinion } from '@shedbook/routes';
import { useSay } from '@shedbook/stand';
import { useCallback, useEffect, useState } from 'react';
import { wordsFor } from '../document/error-words.ts';
import { useWords } from '../words/words.tsx';
import { answerTake, listTakes } from './api.ts';

/** The takes, and answering one. */
export interface SentTakes {
  readonly takes: readonly SentTake[];
  /** @returns whether it is kept */
  readonly answer: (take: SentTake, opinion: TakeOpinion) => Promise<boolean>;
}

/** Told to every list of takes on the screen when one was answered. */
const answered = new EventTarget();

/** Takes of a student, or of everybody those that nobody has listened to. */
export function useSentTakes(student: string | null): SentTakes {
  const words = useWords();
  const say = useSay();
  const [takes, setTakes] = useState<readonly SentTake[]>([]);
  const look = useCallback(() => listTakes(student).then(setTakes), [student]);
  useEffect(() => {
    const quietly = () => void look().catch(() => undefined);
    look().catch((error: unknown) => say(wordsFor(error, words)));
    window.addEventListener('focus', quietly);
    answered.addEventListener('answered', quietly);
    return () => {
      window.removeEventListener('focus', quietly);
      answered.removeEventListener('answered', quietly);
    };
  }, [look, say, words]);
  return {
    takes,
    answer: async (take, opinion) => {
      try {
        await answerTake(take, opinion);
        answered.dispatchEvent(new Event('answered'));
        return true;
      } catch (error) {
        say(wordsFor(error, words));
        return false;
      }
    },
  };
}
