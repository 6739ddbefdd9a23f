/**
 * The report of a take: what was heard, limb by limb. Written by listening, read by coaching and by people.
 *
 * Conventions: seconds from the start of the file; milliseconds only where the name says so, positive is late;
 * dB relative to the take's own lead voice unless the name says otherwise, of a recording K-weighted (ITU-R
 * BS.1770-4) over the first 100 ms of a stroke; bars, beats and slots from 1; bpm counts quarter notes.
 */
import type { WrittenPlace } from '../groove/stroke.ts';
import type { Voice } from '../groove/voice.ts';

/** A stroke that was heard. */
export interface ReportStroke {
  /** Physical onset in the file. */
  readonly timeSeconds: number;
  readonly voice: Voice;
  readonly levelDb: number;
  /** Where it is written, or null for an extra stroke. */
  readonly written: WrittenPlace | null;
  /** Lateness against the take's own pulse, or null for an extra stroke. */
  readonly offsetMs: number | null;
  /** 0 to 1. */
  readonly confidence: number;
}

/** What was heard of one voice. */
export interface VoiceReport {
  readonly hits: number;
  readonly missed: number;
  readonly extra: number;
  readonly offsetMs: { readonly median: number; readonly spread: number };
  readonly levelDb: number;
}

/** Everything heard in a take. */
export interface TakeReport {
  readonly version: number;
  readonly take: { readonly kind: 'audio' | 'midi'; readonly durationSeconds: number };
  readonly alignment: {
    readonly startSeconds: number;
    readonly bpm: number;
    readonly driftBpmPerMinute: number;
    readonly confidence: number;
  };
  readonly strokes: readonly ReportStroke[];
  readonly missed: readonly (WrittenPlace & { readonly voice: Voice })[];
  readonly voices: Readonly<Partial<Record<Voice, VoiceReport>>>;
  readonly swingRatio: { readonly median: number; readonly spread: number; readonly count: number } | null;
  /** Median level of each voice relative to the lead voice. */
  readonly balanceDb: Readonly<Partial<Record<Voice, number>>>;
  /** What could not be heard, and why, in sentences. */
  readonly notHeard: readonly string[];
}
