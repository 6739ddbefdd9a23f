/** The teacher's word: an exercise is good enough at a tempo, whatever was heard of it. */
import { EMPTY_LOG, passEntry } from '@shedbook/coach';
import type { Bpm, PracticeLog } from '@shedbook/core';
import { momentFrom, useSay } from '@shedbook/stand';
import { useWords } from '../words/students-words.tsx';

/** What is passed. */
export interface Passed {
  readonly lesson: string;
  /** Lasting name of the exercise; null for the groove alone. */
  readonly exercise: string | null;
  /** Quarter notes a minute. */
  readonly bpm: Bpm;
}

/** Passes an exercise of a student. @param keep adds to their practice, and says whether it is kept */
export function usePass(keep: (log: PracticeLog) => Promise<boolean>): (passed: Passed) => Promise<void> {
  const words = useWords().students;
  const say = useSay();
  return async (passed) => {
    const id = `teacher ${crypto.randomUUID()}`;
    const entry = passEntry({ ...passed, id, startedAt: momentFrom(new Date()) });
    if (await keep({ ...EMPTY_LOG, entries: [entry] })) say(words.passed);
  };
}
