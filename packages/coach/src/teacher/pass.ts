/** The teacher's own word on an exercise: an entry of the log that counts more than what was heard or said that day. */
import { type Bpm, type PracticeEntry, Seconds } from '@shedbook/core';

/** What the teacher passes. */
export interface Pass {
  /** Unique for ever. */
  readonly id: string;
  /** A moment. */
  readonly startedAt: string;
  /** Lasting name of the lesson. */
  readonly lesson: string;
  /** Lasting name of the exercise; null for the groove alone. */
  readonly exercise: string | null;
  /** Quarter notes a minute at which it is good enough. */
  readonly bpm: Bpm;
}

/** Loops that a pass stands for: a visit to an exercise has some ten. */
const PASS_LOOPS = 10;

/** What an entry of the teacher calls its device and its form. */
const TEACHER = 'teacher';

/** The entry: what a visit would have come to that went well throughout. */
export function passEntry({ bpm, ...pass }: Pass): PracticeEntry {
  const loop = { bpm, verdict: 'clean', faults: [] } as const;
  return {
    ...pass,
    device: TEACHER,
    durationSeconds: Seconds(0),
    form: TEACHER,
    heardBy: 'teacher',
    loops: Array.from({ length: PASS_LOOPS }, () => loop),
  };
}
