/** What makes a bar hard, as facts. */
import type { Fact, PlaceFact, Voice } from '@shedbook/core';
import type { PartName } from './parts.data.ts';

/** Strokes that fall with nothing of the groove. */
export interface FallAloneFact extends Fact {
  readonly fact: 'fall-alone';
  readonly strokes: number;
  readonly places: readonly PlaceFact[];
}

/** Strokes that fall together with voices of the groove. */
export interface FallWithFact extends Fact {
  readonly fact: 'fall-with';
  readonly strokes: number;
  readonly voices: readonly Voice[];
  readonly places: readonly PlaceFact[];
}

/** Nothing is struck on 1. */
export interface SilenceFact extends Fact {
  readonly fact: 'silence';
  /** Bars in which nothing is. */
  readonly bars: number;
}

/** How much there is of a part that is a figure. */
export interface PartFact extends Fact {
  readonly fact: `part-${Exclude<PartName, 'silence'>}`;
  /** What the part counts: strokes, changes, or its own measure. */
  readonly count: number;
}

/** One reason why a bar is as hard as it is. */
export type ReasonFact = FallAloneFact | FallWithFact | SilenceFact | PartFact;
