/** What makes one bar harder, or easier, than another, as facts. */
import type { Fact, PlaceFact } from '@shedbook/core';
import type { PartName } from './parts.data.ts';

/** Whom strokes fall with for the most part: nobody, a foot only, the lead hand. */
export type Fall = 'alone' | 'foot' | 'lead';

/** More strokes, or fewer, fall so in the one than in the other. */
export interface FallFact extends Fact {
  readonly fact: `more-${Fall}` | `fewer-${Fall}`;
  readonly strokes: number;
  /** Where. */
  readonly places: readonly PlaceFact[];
}

/** Strokes fall so at other places. */
export interface MovedFallFact extends Fact {
  readonly fact: `moved-${Fall}`;
  /** Where they fall so in the one. */
  readonly come: readonly PlaceFact[];
  /** How many there are. */
  readonly strokes: number;
  /** Where they do in the other. */
  readonly gone: readonly PlaceFact[];
}

/** There is more, or less, of a part. */
export interface PartDifferenceFact extends Fact {
  readonly fact: `${'more' | 'less'}-of-${Exclude<PartName, Fall>}`;
}

/** One difference between two bars. */
export type DifferenceFact = FallFact | MovedFallFact | PartDifferenceFact;

/** A difference and what it is worth. */
export interface WorthFact extends Fact {
  readonly fact: 'worth-more' | 'worth-less';
  readonly what: DifferenceFact;
  /** Points of difficulty, of what is worth less too a positive number. */
  readonly points: number;
}

/** The exercises that are compared, by number. */
interface Compared extends Fact {
  readonly number: number;
  /** Number of the exercise that it is held against. */
  readonly other: number;
}

/** Two bars compared. */
export type ComparisonFact =
  | (Compared & {
      readonly fact: 'as-hard';
      /** Of difficulty, between them. */
      readonly points: number;
    })
  | (Compared & { readonly fact: 'harder' | 'easier'; readonly why: readonly WorthFact[] })
  | (Compared & {
      readonly fact: 'harder-but' | 'easier-but';
      readonly why: readonly WorthFact[];
      /** What speaks against it. */
      readonly but: readonly WorthFact[];
    });
