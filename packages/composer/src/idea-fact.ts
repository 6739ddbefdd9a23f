/** What a block is about, and what a line makes of it, as facts. */
import type { Fact, PlaceFact, Syllable, Voice } from '@shedbook/core';
import type { FigureName } from './figures.data.ts';

/** A theme that is a figure of the trade. */
export interface FigureFact extends Fact {
  readonly fact: `figure-${FigureName}`;
}

/** By how much something comes later, in beats. */
interface BeatsLaterFact extends Fact {
  readonly fact: 'beats-later';
  readonly beats: number;
}

/** By how much something comes later, in whole bars. */
interface BarsLaterFact extends Fact {
  readonly fact: 'bars-later';
  readonly bars: number;
}

/** By how much something comes later. */
export type LaterFact = BeatsLaterFact | BarsLaterFact;

/** A figure of the trade, displaced. */
export interface FigureLaterFact extends Fact {
  readonly fact: 'theme-figure-later';
  readonly figure: FigureFact;
  readonly later: LaterFact;
}

/** What is counted at a stroke after its beat. */
export interface CountedFact extends Fact {
  readonly fact: 'counted';
  readonly syllable: Syllable;
}

/** Beats that are struck and nothing after them, or every place of which is struck. */
interface BeatsGroup extends Fact {
  readonly fact: 'group-beats' | 'group-whole';
  /** Numbers of the beats. */
  readonly beats: readonly string[];
}

/** Beats of which these places are struck, and not the beats themselves. */
interface BetweenGroup extends Fact {
  readonly fact: 'group-between';
  /** Numbers of the beats. */
  readonly beats: readonly string[];
  readonly syllables: readonly CountedFact[];
}

/** Beats that are struck, and these places after each of them. */
interface WithGroup extends Fact {
  readonly fact: 'group-with';
  /** Numbers of the beats. */
  readonly beats: readonly string[];
  /** How many beats. */
  readonly count: number;
  readonly syllables: readonly CountedFact[];
}

/** Beats that are struck alike. */
export type GroupFact = BeatsGroup | BetweenGroup | WithGroup;

/** A theme with no name: where it strikes, or, under a back beat, where its ghost notes are. */
interface GroupsFact extends Fact {
  readonly fact: 'theme-groups' | 'theme-ghosts';
  readonly groups: readonly GroupFact[];
}

/** A theme of two bars. */
interface TwoBarsFact extends Fact {
  readonly fact: 'theme-two-bars';
  readonly first: readonly GroupFact[];
  readonly second: readonly GroupFact[];
}

/** A theme of two bars alike, or of more: where the first one that sounds strikes. */
interface BeginsFact extends Fact {
  readonly fact: 'theme-twice' | 'theme-begins';
  readonly groups: readonly GroupFact[];
}

/** A theme with strokes that have no name. */
interface StrokesFact extends Fact {
  readonly fact: 'theme-strokes';
  readonly strokes: number;
}

/** What one voice of a dialogue strikes. */
export interface VoiceStrikesFact extends Fact {
  readonly fact: 'voice-strikes';
  readonly voice: Voice;
  readonly groups: readonly GroupFact[];
}

/** A theme that voices share: what each of them strikes. */
interface SharedFact extends Fact {
  readonly fact: 'theme-shared';
  readonly voices: readonly VoiceStrikesFact[];
}

/** A theme that voices share, whose rhythm has a name. */
interface SharedFigureFact extends Fact {
  readonly fact: 'theme-figure-shared';
  readonly figure: FigureFact | FigureLaterFact;
  readonly voices: readonly VoiceStrikesFact[];
}

/** What a block makes of a figure, in a word. */
export interface DrillFact extends Fact {
  readonly fact: 'drill-moved' | 'drill-filled' | 'drill-thinned' | 'drill-turned' | 'drill-joined';
}

/** A figure of the trade, and what its block makes of it. */
interface DrilledFact extends Fact {
  readonly fact: 'theme-drilled';
  readonly figure: FigureFact;
  readonly drill: DrillFact;
}

/** Figures that share a block, of the trade or said by their places, in their order. */
interface FigurePairFact extends Fact {
  readonly fact: 'theme-figures';
  readonly figure: FigureFact | GroupsFact;
  readonly other: FigureFact | GroupsFact;
}

/** What a block is about. */
export type ThemeFact =
  | FigureFact
  | DrilledFact
  | FigurePairFact
  | FigureLaterFact
  | GroupsFact
  | TwoBarsFact
  | BeginsFact
  | SharedFact
  | SharedFigureFact
  | StrokesFact;

/** What stands in the facts of this room and has its own words. */
export type ThemePartFact = DrillFact | GroupFact | CountedFact | VoiceStrikesFact | LaterFact;

/** The line states the theme. */
interface StatedFact extends Fact {
  readonly fact: 'idea-stated';
}

/** The line displaces the theme and leaves it as it is. */
interface DisplacedFact extends Fact {
  readonly fact: 'idea-displaced';
  readonly later: LaterFact;
}

/** The line makes the theme fuller or thinner, in its place. */
interface SizeFact extends Fact {
  readonly fact: 'idea-filled' | 'idea-thinned';
  readonly places: readonly PlaceFact[];
}

/** The line makes the displaced theme fuller or thinner. */
interface DisplacedSizeFact extends Fact {
  readonly fact: 'idea-displaced-filled' | 'idea-displaced-thinned' | 'idea-displaced-turned';
  readonly later: LaterFact;
}

/** The line plays the theme otherwise on some beats, with as many strokes. */
interface TurnedFact extends Fact {
  readonly fact: 'idea-turned';
  readonly beats: readonly PlaceFact[];
}

/** The line ends its block: it takes these beats from the theme of the block before. */
interface JoinsBeforeFact extends Fact {
  readonly fact: 'idea-joins-before';
  readonly beats: readonly PlaceFact[];
}

/** The line is another figure of the trade. */
interface OtherFigureFact extends Fact {
  readonly fact: 'idea-figure';
  readonly figure: FigureFact;
}

/** What a line makes of its block's theme. */
export type IdeaFact =
  | StatedFact
  | DisplacedFact
  | SizeFact
  | DisplacedSizeFact
  | TurnedFact
  | JoinsBeforeFact
  | OtherFigureFact;
