/** What the page and the thread that hears a student's recording say to each other. */
import type { FullReport } from '@shedbook/core';
import type { ExerciseFact, Judgement, Level } from '@shedbook/judge';
import type { RefusalFact } from '@shedbook/listen';
import type { Played } from '../dictation/messages.ts';

/** Asks what was played in a recording of an exercise. */
export interface HearOrder {
  readonly played: Played;
  /** The lesson's text. */
  readonly text: string;
  /** Null where nobody said which: it is whichever was played. */
  readonly exercise: number | null;
  /** Name of the form that was asked for; null where nobody said one, and it is whichever was played. */
  readonly form: string | null;
  /** Quarter notes a minute; null where any tempo will do. */
  readonly bpm: number | null;
  readonly level: Level;
}

/** What was heard. */
export interface HeardTake {
  /** Null where nothing could be followed. */
  readonly report: FullReport | null;
  /** Why there is no report. */
  readonly refusal: RefusalFact | null;
  readonly judgement: Judgement;
  /** Number of the exercise that it was heard as; null for the groove alone. */
  readonly exercise: number | null;
  /** What can be said of that, where nobody said which; null where somebody did. */
  readonly told: ExerciseFact | null;
  /** Name of the form that it was heard in. */
  readonly form: string;
  /** Name of another form in which nothing is wrong with it; null where there is none. */
  readonly cleanIn: string | null;
}

/** Why nothing can be said: the file is no recording, or nobody can tell which exercise it is of. */
export type NotHeard = 'failed' | 'untold';

/** How far it is, and what came of it. */
export type HearReport =
  | { readonly kind: 'listening'; readonly share: number }
  | { readonly kind: 'heard'; readonly heard: HeardTake | NotHeard };
