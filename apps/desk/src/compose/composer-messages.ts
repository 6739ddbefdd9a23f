/** What the page and the composing thread say to each other. */
import type { NoteFact, Reason, ReportedBlock } from '@shedbook/composer';
import type { Exercise } from '@shedbook/core';

/** Asks for a page for a lesson text; null for `keep` only grades what is there. */
export interface ComposeOrder {
  readonly id: number;
  readonly text: string;
  /** Numbers of exercises that stay; null: nothing is composed. */
  readonly keep: readonly number[] | null;
}

/** How hard one bar is, and why, heaviest reason first. */
export interface BarGrade {
  readonly points: number;
  readonly reasons: readonly Reason[];
}

/** A page, or the grades of the one there is. */
export interface ComposeAnswer {
  readonly id: number;
  /** Null where nothing was composed. */
  readonly exercises: readonly Exercise[] | null;
  readonly grades: readonly BarGrade[];
  /** What could not be had. */
  readonly notes: readonly NoteFact[];
  /** The page's blocks, each of one theme; none where nothing was composed. */
  readonly blocks: readonly ReportedBlock[];
}
