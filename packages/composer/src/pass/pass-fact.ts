/** What a second pass made of an exercise, and what it could not do, as facts. */
import type { Fact, PlaceFact, Voice } from '@shedbook/core';
import type { AccentRule, HandsRule, KitRule, SharingRule } from './rules.data.ts';

/** The rhythm is shared out between two voices. */
interface ShareFact extends Fact {
  readonly fact: `share-${SharingRule}`;
  readonly upper: Voice;
  readonly lower: Voice;
}

/** The rhythm goes over the kit. */
interface KitFact extends Fact {
  readonly fact: `kit-${KitRule}`;
  readonly voices: readonly Voice[];
}

/** Strokes are accented. */
interface AccentsFact extends Fact {
  readonly fact: `accents-${AccentRule}`;
  readonly places: readonly PlaceFact[];
}

/** Strokes are given hands. */
interface HandsFact extends Fact {
  readonly fact: `hands-${HandsRule}`;
  /** The hands in order, e.g. `R L R R`. */
  readonly hands: string;
}

/** The phrase ends in a fill. */
interface FillFact extends Fact {
  readonly fact: 'fill';
  readonly beats: number;
  /** Bars of the phrase. */
  readonly bars: number;
  readonly voices: readonly Voice[];
}

/** What a second pass did. */
export type PassFact = ShareFact | KitFact | AccentsFact | HandsFact | FillFact;

/** What has no value to name: nothing would change, all strokes would, no hand plays, no fill can be played. */
interface PlainPassNote extends Fact {
  readonly fact: 'pass-no-stroke' | 'pass-every-stroke' | 'pass-no-hand' | 'pass-too-fast';
}

/** Strokes that take another limb or another drum than the rule says: the right one is busy, or cannot keep up. */
interface OtherwiseNote extends Fact {
  readonly fact: 'pass-otherwise';
  readonly strokes: number;
}

/** What one pass could not do. */
export type OnePassNote = PlainPassNote | OtherwiseNote;

/** Which kind of second pass. */
interface PassKindFact extends Fact {
  readonly fact: `of-${'share' | 'kit' | 'accents' | 'hands' | 'fill'}`;
}

/** What one of several passes could not do. */
interface OfPassNote extends Fact {
  readonly fact: 'pass-of';
  readonly pass: PassKindFact;
  readonly note: OnePassNote;
}

/** What stands in the facts of second passes and has its own words. */
export type PassPartFact = PassKindFact;

/** What second passes could not do. */
export type PassNoteFact = OnePassNote | OfPassNote;
