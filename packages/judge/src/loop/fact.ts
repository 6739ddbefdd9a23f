/** Why a loop was not clean, as facts. */
import type { Fact, PlaceFact, SidedLimb, Voice } from '@shedbook/core';

/** A voice, and the limb that plays it as the student knows it. */
interface OfVoice extends Fact {
  readonly limb: SidedLimb;
  readonly voice: Voice;
}

/** Strokes missing at most places, or too many that are near no written one. */
export interface StrokesFact extends OfVoice {
  readonly fact: 'missed-throughout' | 'extra';
}

/** Strokes missing at a place, or too many near it. */
export interface StrokesAtFact extends OfVoice {
  readonly fact: 'missed-at' | 'extra-near';
  readonly place: PlaceFact;
}

/** A voice that is off at most of its places. */
export interface OffThroughoutFact extends OfVoice {
  readonly fact: 'early-throughout' | 'late-throughout';
  readonly ms: number;
}

/** A voice that is off at a place. */
export interface OffAtFact extends OfVoice {
  readonly fact: 'early-at' | 'late-at';
  readonly ms: number;
  readonly place: PlaceFact;
}

/** A voice out of balance with the lead voice. */
export interface OutOfBalanceFact extends OfVoice {
  readonly fact: 'too-loud' | 'too-quiet';
  readonly db: number;
  readonly lead: Voice;
}

/** Another tempo than the one asked. */
export interface OtherTempoFact extends Fact {
  readonly fact: 'slower-than-asked' | 'faster-than-asked';
  readonly percent: number;
}

/** One fault of a loop, as a clause. */
export type FaultFact =
  | StrokesFact
  | StrokesAtFact
  | OffThroughoutFact
  | OffAtFact
  | OutOfBalanceFact
  | OtherTempoFact;

/** A fault by which a stroke is heard apart from others that it belongs with, as a clause. */
export interface HeardApartFact extends Fact {
  readonly fact: 'heard-apart';
  readonly what: FaultFact;
  readonly voices: readonly Voice[];
}

/** Why a loop was not clean. */
export interface LoopReasonFact extends Fact {
  readonly fact: 'loop-reason';
  readonly what: FaultFact | HeardApartFact;
}

/** Why some of several loops were not clean. */
export interface LoopsReasonFact extends Fact {
  readonly fact: 'loops-reason';
  readonly what: FaultFact | HeardApartFact;
  /** In how many loops. */
  readonly times: number;
  /** Number of loops in all. */
  readonly of: number;
}

/** Every fact of loops. */
export type LoopFact = FaultFact | HeardApartFact | LoopReasonFact | LoopsReasonFact;
