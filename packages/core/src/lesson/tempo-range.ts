/** The tempi that a lesson may ask for, and those that are played, in quarter notes a minute. */
import { Bpm } from '../units.ts';

/** Slowest and fastest tempo. */
export interface TempoRange {
  readonly least: Bpm;
  readonly most: Bpm;
}

/** What a lesson may ask for. */
export const LESSON_TEMPI: TempoRange = { least: Bpm(20), most: Bpm(400) };

/** What desk and practice page play. */
export const PLAYED_TEMPI: TempoRange = { least: Bpm(30), most: Bpm(300) };

/** Whether a tempo lies in a range; what is no number does not. @example isWithin(PLAYED_TEMPI, 20) // false */
export function isWithin({ least, most }: TempoRange, bpm: number): bpm is Bpm {
  return bpm >= least && bpm <= most;
}

/** The tempo of a range that is nearest. @example bringWithin(PLAYED_TEMPI, 20) // 30 */
export function bringWithin({ least, most }: TempoRange, bpm: number): Bpm {
  return Bpm(Math.min(most, Math.max(least, bpm)));
}
