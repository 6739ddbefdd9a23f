/** What a second pass gives back. */
import type { Exercise } from '@shedbook/core';
import type { OnePassNote, PassFact } from './pass-fact.ts';

/** An exercise after a second pass. */
export interface Arranged {
  /** Null where the pass has nothing to do, or cannot be played. */
  readonly exercise: Exercise | null;
  /** What was done, or null. */
  readonly said: PassFact | null;
  /** What could not be done, and why. */
  readonly notes: readonly OnePassNote[];
}
