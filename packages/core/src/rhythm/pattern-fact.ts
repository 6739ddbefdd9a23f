/** What is wrong with a pattern text and what would be right, as facts. */
import type { Fact } from '../fact.ts';

/** Something that has no value to name. */
interface PlainPatternFact extends Fact {
  readonly fact: 'bar-without-beats' | 'separate-beats' | 'end-bar' | 'fill-bar';
}

/** A number of beats. */
interface BeatsFact extends Fact {
  readonly fact: 'beats';
  readonly beats: number;
}

/** How many beats a bar of a meter has. */
interface BeatsInBarFact extends Fact {
  readonly fact: 'beats-in-bar';
  readonly beats: number;
  /** Text of the meter, e.g. `3/4`. */
  readonly meter: string;
}

/** A beat that is divided in a way there is not. */
interface SlotsInBeatFact extends Fact {
  readonly fact: 'slots-in-beat';
  readonly slots: number;
  /** The beat as written. */
  readonly text: string;
}

/** Into how many slots a beat may be divided. */
interface SlotsABeatFact extends Fact {
  readonly fact: 'slots-a-beat';
  readonly slots: readonly string[];
}

/** A character that is no mark. */
interface CharacterFact extends Fact {
  readonly fact: 'character';
  readonly character: string;
}

/** Marks that may stand here, or before it. */
interface MarksFact extends Fact {
  readonly fact: 'one-of-marks' | 'marks-for-voice' | 'held-after';
  /** Marks with a space between them. */
  readonly marks: string;
}

/** What to write instead of a character. */
interface WriteMarkFact extends Fact {
  readonly fact: 'write-mark';
  readonly mark: string;
}

/** What is found in a pattern text, expected of it, or likely to repair it. */
export type PatternFact =
  | PlainPatternFact
  | BeatsFact
  | BeatsInBarFact
  | SlotsInBeatFact
  | SlotsABeatFact
  | CharacterFact
  | MarksFact
  | WriteMarkFact;
