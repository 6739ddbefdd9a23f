/** A verdict as facts: what to do, in words of sound and movement, and the figures behind it. */
import type { Fact, PlaceFact, SidedLimb, Voice } from '@shedbook/core';

/** What to do where no limb and no figure needs to be named. */
interface PlainAdviceFact extends Fact {
  readonly fact:
    | 'do-play-what-is-asked'
    | 'do-swing'
    | 'do-swing-sixteenths'
    | 'do-straighten'
    | 'do-straighten-sixteenths'
    | 'do-breathe'
    | 'do-keep-moving'
    | 'do-join-in'
    | 'do-quieten-loudspeaker'
    | 'do-come-nearer';
}

/** What to do with one voice. */
interface VoiceAdviceFact extends Fact {
  readonly fact:
    | 'do-bring-in'
    | 'do-fill-in'
    | 'do-leave-out'
    | 'do-swing-voice'
    | 'do-swing-voice-sixteenths'
    | 'do-straighten-voice'
    | 'do-straighten-voice-sixteenths'
    | 'do-lay-back'
    | 'do-push'
    | 'do-even-out'
    | 'do-speak-up'
    | 'do-ghost-softer'
    | 'do-tell-from-loudspeaker'
    | 'do-let-be-heard';
  readonly voice: Voice;
}

/** What to do with one voice at a place. */
interface PlaceAdviceFact extends Fact {
  readonly fact:
    | 'do-fill-in-at'
    | 'do-put-where-written'
    | 'do-leave-out-near'
    | 'do-wait-at'
    | 'do-sooner-at'
    | 'do-wait-for-last-triplet';
  readonly voice: Voice;
  readonly place: PlaceFact;
}

/** What to do with one voice beside another. */
interface BesideAdviceFact extends Fact {
  readonly fact: 'do-wait-for' | 'do-sooner-than' | 'do-softer-under';
  readonly voice: Voice;
  readonly lead: Voice;
}

/** Another drum than the one that is written. */
interface OtherDrumFact extends Fact {
  readonly fact: 'do-move-to';
  readonly voice: Voice;
  readonly instead: Voice;
}

/** Another exercise of the sheet than the one asked. */
interface OtherExerciseFact extends Fact {
  readonly fact: 'do-play-the-asked';
  readonly exercise: number;
}

/** Beats too late or too early. */
interface BeatsFact extends Fact {
  readonly fact: 'do-come-in-sooner' | 'do-come-in-later';
  readonly beats: number;
}

/** A bar that was not gone through. */
interface BarAdviceFact extends Fact {
  readonly fact: 'do-play-bar';
  /** Its number as it is written, from 1. */
  readonly bar: string;
}

/** Bars that were not gone through, or the order in which they came instead. */
interface BarsAdviceFact extends Fact {
  readonly fact: 'do-play-bars' | 'do-play-in-order';
  /** Their numbers as they are written, from 1. */
  readonly bars: readonly string[];
}

/** Another tempo than the one asked. */
interface TempoAdviceFact extends Fact {
  readonly fact: 'do-play-slower' | 'do-play-faster';
  readonly bpm: number;
}

/** One thing to do. */
export type AdviceFact =
  | PlainAdviceFact
  | VoiceAdviceFact
  | PlaceAdviceFact
  | BesideAdviceFact
  | OtherDrumFact
  | OtherExerciseFact
  | BeatsFact
  | BarAdviceFact
  | BarsAdviceFact
  | TempoAdviceFact;

interface OfVoice extends Fact {
  readonly limb: SidedLimb;
  readonly voice: Voice;
}

/** Strokes that are missing or too many. */
interface CountFigureFact extends OfVoice {
  readonly fact: 'figure-missing' | 'figure-extra';
  readonly times: number;
  readonly of: number;
}

/** Strokes that are too many near places. */
interface PlacesFigureFact extends OfVoice {
  readonly fact: 'figure-extra-near';
  readonly times: number;
  readonly of: number;
  readonly places: readonly PlaceFact[];
}

/** Strokes that are missing at places, or in whole bars or rounds. */
interface MissingAtFigureFact extends OfVoice {
  readonly fact: 'figure-missing-at';
  readonly times: number;
  readonly of: number;
  readonly where: WhereFact;
}

/** How early, late or uneven a voice is. */
interface TimeFigureFact extends OfVoice {
  readonly fact: 'figure-early' | 'figure-late' | 'figure-uneven';
  readonly ms: number;
}

/** How early or late a voice is at places, or in whole bars or rounds. */
interface TimeAtFigureFact extends OfVoice {
  readonly fact: 'figure-early-at' | 'figure-late-at';
  readonly ms: number;
  readonly where: WhereFact;
}

/** How loud a voice is beside the lead voice. */
interface LevelFigureFact extends OfVoice {
  readonly fact: 'figure-loud' | 'figure-soft';
  readonly db: number;
  readonly lead: Voice;
}

/** A bar of the form, a time through it, or a bar in one of these; numbers from 1. */
export type PartFact =
  | (Fact & { readonly fact: 'part-bar'; readonly bar: number })
  | (Fact & { readonly fact: 'part-round'; readonly round: number })
  | (Fact & { readonly fact: 'part-bar-of-round'; readonly bar: number; readonly round: number });

/** Whole bars or rounds. */
interface InPartsFact extends Fact {
  readonly fact: 'in-parts';
  readonly parts: readonly PartFact[];
}

/** Single places. */
interface OnPlacesFact extends Fact {
  readonly fact: 'on-places';
  readonly places: readonly PlaceFact[];
}

/** Where something happens: at places, or in whole bars or rounds. */
export type WhereFact = OnPlacesFact | InPartsFact;

/** A tempo. */
interface TempoFigureFact extends Fact {
  readonly fact: 'figure-rushing' | 'figure-dragging' | 'figure-slow' | 'figure-fast';
  readonly percent: number;
}

/** Bars that were not gone through. */
interface BarsFigureFact extends Fact {
  readonly fact: 'figure-bars-missing';
  readonly times: number;
  readonly of: number;
}

/** The same, where what was played is another exercise as well. */
interface BarsOrFigureFact extends Fact {
  readonly fact: 'figure-bars-missing-or';
  readonly times: number;
  readonly of: number;
  readonly exercise: number;
}

/** How early or late the performance is as a whole. */
interface OffsetFigureFact extends Fact {
  readonly fact: 'figure-ahead' | 'figure-behind';
  readonly ms: number;
}

/** The figures behind a piece of advice. */
export type FigureFact =
  | CountFigureFact
  | PlacesFigureFact
  | TimeFigureFact
  | TimeAtFigureFact
  | MissingAtFigureFact
  | LevelFigureFact
  | TempoFigureFact
  | BarsFigureFact
  | BarsOrFigureFact
  | OffsetFigureFact;

/** Praise. */
export type PraiseFact =
  | (Fact & { readonly fact: 'praise-all-there'; readonly count: number })
  | (Fact & { readonly fact: 'praise-tempo-holds'; readonly bpm: number })
  | (Fact & { readonly fact: 'praise-steady'; readonly voice: Voice; readonly ms: number })
  | (Fact & { readonly fact: 'praise-clean' });

/** Nothing is wrong with a take in a form that was not asked. */
export interface CleanInFormFact extends Fact {
  readonly fact: 'clean-in-form';
  readonly form: string;
}

/** Which exercise a take is of, where nobody named one: a number from 1, or the groove alone. */
export type ExerciseFact =
  | (Fact & { readonly fact: 'exercise-played' | 'exercise-most-like'; readonly exercise: number })
  | (Fact & { readonly fact: 'time-played' | 'time-most-like' });

/** Every fact of verdicts. */
export type VerdictFact =
  | AdviceFact
  | FigureFact
  | WhereFact
  | PartFact
  | PraiseFact
  | CleanInFormFact
  | ExerciseFact;
