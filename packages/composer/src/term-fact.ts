/** What a page of a term is called and brings, as facts. */
import type { Fact } from '@shedbook/core';

/** The heading of a page. */
interface TermPageFact extends Fact {
  readonly fact: 'term-page';
  /** Number of the page, from 1. */
  readonly page: number;
}

/** Cells that the term has here for the first time. */
interface TermCellsFact extends Fact {
  readonly fact: 'term-cells';
  readonly cells: readonly string[];
}

/** How many moves are new, and how many of earlier pages come back. */
interface TermMovesFact extends Fact {
  readonly fact: 'term-new-moves' | 'term-moves-back';
  readonly moves: number;
}

/** What there is to say of a page of a term. */
export type TermFact = TermPageFact | TermCellsFact | TermMovesFact;
