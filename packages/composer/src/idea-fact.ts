/** What a block is about, and what a line makes of it, as facts. */
import type { Fact, PlaceFact } from '@shedbook/core';
import type { FigureName } from './figures.data.ts';

/** A theme that is a figure of the trade. */
interface FigureFact extends Fact {
  readonly fact: `figure-${FigureName}`;
}

/** A theme with no name: where it strikes. */
interface PlacesFact extends Fact {
  readonly fact: 'theme-places';
  readonly places: readonly PlaceFact[];
}

/** A theme with no name and more strokes than a heading lists: the beats that it strikes, and where it strikes between. */
interface BeatsFact extends Fact {
  readonly fact: 'theme-beats-places';
  /** Numbers of the beats. */
  readonly beats: readonly string[];
  readonly places: readonly PlaceFact[];
}

/** A theme with no name and more strokes than a heading can list. */
interface StrokesFact extends Fact {
  readonly fact: 'theme-strokes';
  readonly strokes: number;
}

/** What a block is about. */
export type ThemeFact = FigureFact | PlacesFact | BeatsFact | StrokesFact;

/** The line states the theme. */
interface StatedFact extends Fact {
  readonly fact: 'idea-stated';
}

/** The line displaces the theme and leaves it as it is. */
interface DisplacedFact extends Fact {
  readonly fact: 'idea-displaced';
  /** In beats. */
  readonly later: number;
}

/** The line makes the theme fuller or thinner, in its place. */
interface SizeFact extends Fact {
  readonly fact: 'idea-filled' | 'idea-thinned';
  readonly places: readonly PlaceFact[];
}

/** The line makes the displaced theme fuller or thinner. */
interface DisplacedSizeFact extends Fact {
  readonly fact: 'idea-displaced-filled' | 'idea-displaced-thinned' | 'idea-displaced-turned';
  /** In beats. */
  readonly later: number;
}

/** The line plays the theme otherwise on some beats, with as many strokes. */
interface TurnedFact extends Fact {
  readonly fact: 'idea-turned';
  /** Numbers of the beats. */
  readonly beats: readonly string[];
}

/** The line joins the theme with the one before: it takes these beats from it. */
interface JoinedFact extends Fact {
  readonly fact: 'idea-joined';
  /** Numbers of the beats. */
  readonly beats: readonly string[];
}

/** What a line makes of its block's theme. */
export type IdeaFact = StatedFact | DisplacedFact | SizeFact | DisplacedSizeFact | TurnedFact | JoinedFact;
