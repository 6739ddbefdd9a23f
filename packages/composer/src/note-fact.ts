/** What a composed page could not have, and why, as facts. */
import type { Fact } from '@shedbook/core';

/** A move from one cell to the next. */
export interface MoveFact extends Fact {
  readonly fact: 'move';
  readonly from: string;
  readonly to: string;
}

/** What has no value to name. */
interface PlainNoteFact extends Fact {
  readonly fact: 'no-vocabulary' | 'no-bar-left';
}

/** The limits name a cell that the vocabulary has not. */
interface StrangeCellFact extends Fact {
  readonly fact: 'strange-cell';
  readonly cell: string;
}

/** The limits name a beat that the bar has not. */
interface StrangeBeatFact extends Fact {
  readonly fact: 'strange-beat';
  /** Number of the beat, as written. */
  readonly beat: string;
  /** Text of the meter, e.g. `3/4`. */
  readonly meter: string;
  /** How many beats a bar has. */
  readonly beats: number;
}

/** There are fewer different exercises than were asked for. */
interface FewExercisesFact extends Fact {
  readonly fact: 'few-exercises';
  /** Number of exercises. */
  readonly asked: number;
  /** Number of exercises. */
  readonly left: number;
}

/** Moves that the page has not. */
interface MissedMovesFact extends Fact {
  readonly fact: 'missed-moves';
  readonly moves: readonly MoveFact[];
}

/** Moves that a page of so few exercises cannot have. */
interface TooManyMovesFact extends Fact {
  readonly fact: 'too-many-moves';
  readonly moves: readonly MoveFact[];
  /** Number of exercises that all of them need at least. */
  readonly exercises: number;
}

/** Every line of the page is needed for moves, so that its lines have no theme in common. */
interface NoThemesFact extends Fact {
  readonly fact: 'no-themes';
  /** Number of exercises from which on a page with so many moves has themes. */
  readonly exercises: number;
}

/** A kept exercise is easier than the one before it. */
interface EasierFact extends Fact {
  readonly fact: 'easier-than-before';
  /** Number of the exercise. */
  readonly exercise: number;
  /** Number of the exercise before it. */
  readonly before: number;
}

/** The largest step in difficulty is above its bound. */
interface LargeStepFact extends Fact {
  readonly fact: 'large-step';
  /** In points. */
  readonly step: number;
  /** In points. */
  readonly bound: number;
}

/** Exercises ask a limb for two strokes, or for three in a row, faster than is published of one, or for a double stroke. */
interface FastStrokesFact extends Fact {
  readonly fact: 'fast-pairs' | 'fast-doubles' | 'fast-runs';
  /** Numbers of the exercises. */
  readonly exercises: readonly string[];
  /** The fastest of them, in strokes a second at the goal tempo. */
  readonly rate: number;
  /** What is published of one limb, in strokes a second. */
  readonly published: number;
}

/** Cells that one limb cannot play at the goal tempo, and that no page has therefore. */
interface CellsTooFastFact extends Fact {
  readonly fact: 'cells-too-fast';
  readonly cells: readonly string[];
  /** What the limb keeps up, in strokes a second. */
  readonly rate: number;
}

/** Moves that one limb cannot play at the goal tempo, and that no page has therefore. */
interface MovesTooFastFact extends Fact {
  readonly fact: 'moves-too-fast';
  readonly moves: readonly MoveFact[];
  /** What the limb keeps up, in strokes a second. */
  readonly rate: number;
}

/** Moves of a dialogue that its page leaves for later ones. */
interface MovesForLaterFact extends Fact {
  readonly fact: 'moves-for-later';
  /** Number of moves. */
  readonly moves: number;
}

/** What a composed page could not have. */
export type NoteFact =
  | PlainNoteFact
  | StrangeCellFact
  | StrangeBeatFact
  | FewExercisesFact
  | MissedMovesFact
  | TooManyMovesFact
  | NoThemesFact
  | EasierFact
  | LargeStepFact
  | FastStrokesFact
  | CellsTooFastFact
  | MovesTooFastFact
  | MovesForLaterFact;
