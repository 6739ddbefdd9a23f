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
  TermPage,
  VariationFact,
} from '@shedbook/composer';
import type { Exercise, Voice } from '@shedbook/core';

/** Asks for bars near an exercise, for its variations, or for a page that leads to it. */
export type FromAsk =
  | {
      readonly ask: 'variations';
      /** Number of the exercise. */
      readonly exercise: number;
    }
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
      /** Numbers of the exercises that the student has. */
      readonly has: readonly number[];
    };

/** What is to be proposed: a page or a term from the vocabulary, a page for one move between its cells, a review of lessons, second passes over exercises that are there, or what one leads to. */
export type Ask =
  | FromAsk
  | {
      readonly ask: 'page';
      /** The voice that answers the comping voice, or null. */
      readonly answering: Voice | null;
    }
  | {
      readonly ask: 'term';
      readonly pages: number;
      /** How many others were proposed before. */
      readonly again: number;
    }
  | {
      readonly ask: 'move';
      /** Texts of the cells. */
      readonly from: string;
      readonly to: string;
      /** How many others were proposed before. */
      readonly again: number;
    }
  | {
      readonly ask: 'review';
      /** Texts of the lessons whose exercises are mixed. */
      readonly lessons: readonly string[];
      /** How many others were proposed before. */
      readonly again: number;
    }
  | {
      readonly ask: 'passes';
      /** Made one after another. */
      readonly passes: readonly Pass[];
      /** Numbers of the exercises. */
      readonly exercises: readonly number[];
      /** Another one gives other fills and free accents. */
      readonly seed: number;
    };

/** Asks for the grades of a lesson text and, where something is asked, for a proposal. */
export interface ComposeOrder {
  readonly id: number;
  readonly text: string;
  /** Number of the section, from 0; of a lesson that is not divided 0. */
  readonly section: number;
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
  readonly said: readonly (PassFact | IdeaFact | VariationFact)[];
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
  /** The pages of a term, in whose order the exercises are; else none. */
  readonly term: readonly TermPage[];
}

/** The grades of what is written, and what is proposed. */
export interface ComposeAnswer {
  readonly id: number;
  readonly grades: readonly BarGrade[];
  readonly proposal: Proposal | null;
}
