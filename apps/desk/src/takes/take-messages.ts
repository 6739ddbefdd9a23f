/** What the page and the thread that hears a student's recording say to each other. */
import type { FullReport } from '@shedbook/core';
import type { Judgement, Level } from '@shedbook/judge';
import type { RefusalFact } from '@shedbook/listen';
import type { Played } from '../dictation/messages.ts';

/** Asks what was played in a recording of an exercise. */
export interface HearOrder {
  readonly played: Played;
  /** The lesson's text. */
  readonly text: string;
  readonly exercise: number;
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
  /** Name of the form that it was heard in. */
  readonly form: string;
  /** Name of another form in which nothing is wrong with it; null where there is none. */
  readonly cleanIn: string | null;
}

/** How far it is, and what came of it; null where the file is no recording. */
export type HearReport =
  | { readonly kind: 'listening'; readonly share: number }
  | { readonly kind: 'heard'; readonly heard: HeardTake | null };
