/**
 * Strokes that an instrument sent itself: notes of an electronic kit.
 *
 * Conventions: seconds; levels in dB relative to a plain stroke, 0 dB is velocity 90 (core's dynamics:
 * 40·log10(velocity/90)).
 */
import type { Voice } from '@shedbook/core';
import { ANY, KIND_COUNT, kindOf, type Observations } from '../align/observations.ts';

/** One stroke, as the instrument sent it. */
export interface PlayedNote {
  readonly timeSeconds: number;
  readonly voice: Voice;
  readonly levelDb: number;
}

/** Notes nearer than this are one moment for alignment. */
const MERGE_SECONDS = 0.03;

/** Notes as alignment sees a take. They must be in order of time. */
export function observeNotes(notes: readonly PlayedNote[]): Observations {
  const times: number[] = [];
  const values: number[] = [];
  for (const { timeSeconds, voice } of notes) {
    if (times.length === 0 || timeSeconds - times.at(-1)! > MERGE_SECONDS) {
      times.push(timeSeconds);
      for (let kind = 0; kind < KIND_COUNT; kind += 1) values.push(0);
    }
    const row = (times.length - 1) * KIND_COUNT;
    values[row + kindOf(voice)] = 1;
    values[row + ANY] = 1;
  }
  return { times: Float64Array.from(times), values: Float64Array.from(values) };
}
