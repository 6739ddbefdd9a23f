/** What listening has to say besides its report. */
import type { Fact, Voice } from '@shedbook/core';

/** A take in which there is nothing to report on. */
interface NothingFact extends Fact {
  readonly fact:
    | 'no-sound'
    | 'silent-recording'
    | 'no-drum-notes'
    | 'no-taps'
    | 'nothing-played'
    | 'only-the-loudspeaker'
    | 'nothing-asked'
    | 'no-drums-followed'
    | 'no-pulse-followed'
    | 'no-beat-followed'
    | 'sound-of-no-exercise'
    | 'notes-of-no-exercise';
}

/** Why there is no report. */
export type RefusalFact = NothingFact;

/** Strokes that could not be heard under a louder voice and are written as in the other beats. */
export interface AssumedFact extends Fact {
  readonly fact: 'written-as-elsewhere';
  readonly voice: Voice;
  readonly under: Voice;
  readonly count: number;
}

/** A line check of the kit that a take was heard with. */
export interface LineCheckFact extends Fact {
  readonly fact: 'heard-with-line-check';
  /** As the person calls it. */
  readonly name: string;
}

/** What listening states. */
export type ListenFact = RefusalFact | AssumedFact | LineCheckFact;
