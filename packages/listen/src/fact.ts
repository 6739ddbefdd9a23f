/** What listening has to say besides its report. */
import type { Fact } from '@shedbook/core';

/** A take in which there is nothing to report on. */
interface NothingFact extends Fact {
  readonly fact:
    | 'no-sound'
    | 'silent-recording'
    | 'no-drum-notes'
    | 'nothing-played'
    | 'nothing-asked'
    | 'no-drums-followed'
    | 'no-pulse-followed'
    | 'sound-of-no-exercise'
    | 'notes-of-no-exercise';
}

/** The groove is there, but not the exercise. */
interface NotExerciseFact extends Fact {
  readonly fact: 'not-the-exercise';
  /** Number of the exercise that was asked. */
  readonly exercise: number;
  /** How much of its own strokes agrees, in percent. */
  readonly percent: number;
}

/** Another exercise of the lesson was played. */
interface OtherExerciseFact extends Fact {
  readonly fact: 'rather-exercise';
  /** Number of the exercise that was asked. */
  readonly exercise: number;
  /** How much of its own strokes agrees, in percent. */
  readonly percent: number;
  /** Number of the exercise that was played. */
  readonly played: number;
}

/** Why there is no report. */
export type RefusalFact = NothingFact | NotExerciseFact | OtherExerciseFact;

/** What listening states. */
export type ListenFact = RefusalFact;
