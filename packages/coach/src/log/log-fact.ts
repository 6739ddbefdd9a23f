/** What is wrong with the file of a practice log and what would be right, as facts. */
import type { ExpectedFact, Fact } from '@shedbook/core';

/** What has no value to name. */
interface PlainLogFact extends Fact {
  readonly fact:
    | 'a-moment'
    | 'a-value'
    | 'count-from-one'
    | 'file-end'
    | 'key-in-quotes'
    | 'an-object'
    | 'newer-program';
}

/** An object with these keys. */
interface ObjectFact extends Fact {
  readonly fact: 'object-with';
  readonly keys: readonly string[];
}

/** A number between two bounds; tempi in quarter notes a minute. */
export interface LogRangeFact extends Fact {
  readonly fact: 'amount-from' | 'tempo-from' | 'seconds-from';
  readonly least: number;
  readonly most: number;
}

/** A key that stands twice; in its quotes, as written. */
interface KeyTwiceFact extends Fact {
  readonly fact: 'key-twice';
  readonly key: string;
}

/** Characters one of which has to follow. */
interface CharactersFact extends Fact {
  readonly fact: 'characters';
  readonly characters: readonly string[];
}

/** How deep values may lie in each other. */
interface LevelsFact extends Fact {
  readonly fact: 'levels-at-most';
  readonly levels: number;
}

/** What is found in a log's file, expected of it, or likely to repair it. */
export type LogFact =
  | ExpectedFact
  | PlainLogFact
  | ObjectFact
  | LogRangeFact
  | KeyTwiceFact
  | CharactersFact
  | LevelsFact;
