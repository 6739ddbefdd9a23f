/** What a page of a term is called and brings, as facts. */
import type { Fact } from '@shedbook/core';
import type { CountedFact } from './idea-fact.ts';

/** The heading of a page. */
interface TermPageFact extends Fact {
  readonly fact: 'term-page';
  /** Number of the page, from 1. */
  readonly page: number;
}

/** A cell that is silent, or struck on the beat alone. */
interface PlainCellFact extends Fact {
  readonly fact: 'cell-silent' | 'cell-beat';
}

/** A cell that is struck at these places, and on the beat or not. */
interface CountedCellFact extends Fact {
  readonly fact: 'cell-between' | 'cell-with';
  readonly syllables: readonly CountedFact[];
}

/** A cell as it is counted. */
export type CellFact = PlainCellFact | CountedCellFact;

/** Cells that the term has here for the first time. */
interface TermCellsFact extends Fact {
  readonly fact: 'term-cells';
  /** As they are counted; as text where a cell has more than plain strokes, or a place without a name. */
  readonly cells: readonly (CellFact | string)[];
}

/** How many moves are new, and how many of earlier pages come back. */
interface TermMovesFact extends Fact {
  readonly fact: 'term-new-moves' | 'term-moves-back';
  readonly moves: number;
}

/** What there is to say of a page of a term. */
export type TermFact = TermPageFact | TermCellsFact | TermMovesFact;
