/** What listening has to say besides its report. */
import type { Fact } from '@shedbook/core';

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

/** What listening states. */
export type ListenFact = RefusalFact;
