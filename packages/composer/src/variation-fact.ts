/** How a variation differs from its bar, as facts. */
import type { Fact, PlaceFact } from '@shedbook/core';

/** One stroke more, or one fewer. */
interface StrokeVariationFact extends Fact {
  readonly fact: 'variation-more' | 'variation-fewer';
  readonly place: PlaceFact;
}

/** All of it moved, turned round, or strokes and silence exchanged. */
interface WholeVariationFact extends Fact {
  readonly fact:
    | 'variation-slot-later'
    | 'variation-slot-earlier'
    | 'variation-beat-later'
    | 'variation-backwards'
    | 'variation-exchanged';
}

/** How a variation differs from its bar. */
export type VariationFact = StrokeVariationFact | WholeVariationFact;
