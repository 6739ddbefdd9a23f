/** Takes that students sent: looked for when somebody comes back to the window, and answered. */
import type { Inbox, SentTake, TakeOpinion } from '@shedbook/routes';
import { useSay } from '@shedbook/stand';
import { useCallback, useEffect } from 'react';
import { useChanges } from '../document/changes.ts';
import { wordsFor } from '../document/error-words.ts';
import { useFresh } from '../document/use-fresh.ts';
import { useWords } from '../words/students-words.tsx';
import { answerTake, listTakes, readInbox } from './api.ts';

/** The takes, and answering one. */
export interface SentTakes {
  readonly takes: readonly SentTake[];
  /** @returns whether it is kept */
  readonly answer: (take: SentTake, opinion: TakeOpinion) => Promise<boolean>;
  /** Has every list of takes on the screen look again. */
  readonly look: () => void;
}

const NONE: readonly SentTake[] = [];

/** Told to every list of takes on the screen when one was answered. */
const answered = new EventTarget();

function look(): void {
  answered.dispatchEvent(new Event('answered'));
}

/** What the server has of takes, looked at again whenever one was answered. @param read the same function each time */
function useTakes<T>(read: () => Promise<T>): T | null {
  const words = useWords();
  const say = useSay();
  const { value, error, refresh } = useFresh(read);
  useEffect(() => {
    answered.addEventListener('answered', refresh);
    return () => answered.removeEventListener('answered', refresh);
  }, [refresh]);
  useChanges(refresh);
  useEffect(() => {
    if (error && value === null) say(wordsFor(error, words));
  }, [error, value, say, words]);
  return value;
}

/** Days without practice after which somebody is asked after: longer than the week between two lessons. */
const AWAY_DAYS = 10;

/** The beginning of the last day on which somebody counts as away who played before it. */
function awaySince(): Date {
  const day = new Date();
  day.setHours(0, 0, 0, 0);
  day.setDate(day.getDate() - AWAY_DAYS + 1);
  return day;
}

const readNow = () => readInbox(awaySince());

/** What needs an ear first; null while it is on its way. */
export function useInbox(): Inbox | null {
  return useTakes(readNow);
}

/** Takes of a student. */
export function useSentTakes(student: string): SentTakes {
  const words = useWords();
  const say = useSay();
  const takes = useTakes(useCallback(() => listTakes(student), [student])) ?? NONE;
  return {
    takes,
    look,
    answer: async (take, opinion) => {
      try {
        await answerTake(take, opinion);
        look();
        return true;
      } catch (error) {
        say(wordsFor(error, words));
        return false;
      }
    },
  };
}
