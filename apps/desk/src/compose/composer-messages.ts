/** What the page and the composing thread say to each other. */
import type {
  Direction,
  IdeaFact,
  NoteFact,
  Pass,
  PassFact,
  PassNoteFact,
  Reason,
  ReportedBlock,
} from '@shedbook/composer';
import type { Exercise, Voice } from '@shedbook/core';

/** Asks for bars near an exercise, or for a page that leads to it. */
export type FromAsk =
  | {
      readonly ask: 'near';
      /** Number of the exercise. */
      readonly exercise: number;
      readonly direction: Direction;
    }
  | {
      readonly ask: 'goal';
      /** Number of the exercise. */
      readonly exercise: number;
      /** Whether the student has the exercises before it. */
      readonly hasBefore: boolean;
    };

/** What is to be proposed: a page from the vocabulary, second passes over exercises that are there, or what one leads to. */
export type Ask =
  | FromAsk
  | {
      readonly ask: 'page';
      /** The voice that answers the comping voice, or null. */
      readonly answering: Voice | null;
    }
  | {
      readonly ask: 'passes';
      readonly pass: Pass;
      /** Numbers of the exercises. */
      readonly exercises: readonly number[];
      /** Another one gives other fills and free accents. */
      readonly seed: number;
    };

/** Asks for the grades of a lesson text and, where something is asked, for a proposal. */
export interface ComposeOrder {
  readonly id: number;
  readonly text: string;
  readonly ask: Ask | null;
}

/** How hard one bar is, and why, heaviest reason first. */
export interface BarGrade {
  readonly points: number;
  readonly reasons: readonly Reason[];
}

/** One exercise that is proposed. */
export interface Proposed {
  readonly exercise: Exercise;
  readonly points: number;
  /** Number of the exercise that it is made of, or null. */
  readonly from: number | null;
  /** Whether it is on the page already and stays there. */
  readonly isKept: boolean;
  readonly said: readonly (PassFact | IdeaFact)[];
  readonly notes: readonly PassNoteFact[];
}

/** What is proposed beside what is written. */
export interface Proposal {
  readonly of: Ask['ask'];
  readonly exercises: readonly Proposed[];
  /** What could not be had. */
  readonly notes: readonly (NoteFact | PassNoteFact)[];
  /** The page's blocks, each of one theme; none of second passes. */
  readonly blocks: readonly ReportedBlock[];
}

/** The grades of what is written, and what is proposed. */
export interface ComposeAnswer {
  readonly id: number;
  readonly grades: readonly BarGrade[];
  readonly proposal: Proposal | null;
}
