/**
 * A stroke with its written place, on the way from a file to patterns.
 *
 * Conventions: bars count from 0; `inBar` is in whole notes from the bar line, exact.
 */
import type { Articulation, Voice } from '../kit/voice.ts';
import type { Fraction } from '../rhythm/fraction.ts';

/** A stroke with its place and its touch. */
export interface PlacedStroke {
  readonly bar: number;
  readonly inBar: Fraction;
  /** The voice that sounds. */
  readonly voice: Voice;
  readonly articulation: Articulation;
  readonly accent: boolean;
  readonly ghost: boolean;
  /** Whole notes from its beginning to its end, where it is held; left out where it is not. */
  readonly held?: Fraction;
}
