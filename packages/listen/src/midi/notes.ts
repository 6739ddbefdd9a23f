/**
 * Strokes that an instrument sent itself: notes of an electronic kit.
 *
 * Conventions: seconds; levels as the kit has them, 0 dB is velocity 90 (core's dynamics).
 */
import {
  type Articulation,
  hasOnset,
  isVoice,
  type LeadDb,
  type Seconds,
  type SoundingVoice,
  TakeDb,
  type Voice,
} from '@shedbook/core';
import { ANY, KIND_COUNT, kindOf, type Observations } from '../align/observations.ts';

/** A stroke of one voice, wherever it was heard: what notes are matched by. */
export interface TimedVoice {
  readonly timeSeconds: number;
  readonly voice: Voice;
  /** On the scale of where it was heard. */
  readonly levelDb: number;
}

/** One stroke, as the instrument sent it. */
export interface PlayedNote extends TimedVoice {
  readonly timeSeconds: Seconds;
  readonly levelDb: TakeDb;
}

/** A note of a MIDI file, as far as a stroke is told by it. */
interface SentNote {
  readonly timeSeconds: Seconds;
  readonly voice: SoundingVoice;
  readonly articulation: Articulation;
  readonly levelDb: LeadDb;
}

/**
 * The strokes of a MIDI file on the drum set, in its order: a brush that is drawn over the head strikes nothing.
 * @param onPad the voice of an exercise on one pad, whatever key it sends; null on a drum set
 */
export function strokesSent(notes: readonly SentNote[], onPad: Voice | null = null): readonly PlayedNote[] {
  return notes.filter(hasOnset).flatMap(({ timeSeconds, voice: sent, levelDb }): PlayedNote[] => {
    const voice = onPad ?? sent;
    return isVoice(voice) ? [{ timeSeconds, voice, levelDb: TakeDb(levelDb) }] : [];
  });
}

/** Notes nearer than this are one moment for alignment. */
const MERGE_SECONDS = 0.03;

/** Notes as alignment sees a take. They must be in order of time. */
export function observeNotes(notes: readonly TimedVoice[]): Observations {
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
