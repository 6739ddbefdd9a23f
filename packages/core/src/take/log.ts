/**
 * A practice log: what was played, when, how fast and what came of it. Kept on the student's device, exported,
 * merged between devices and read by the coach and the teacher.
 *
 * Conventions: a moment is ISO 8601 local time with its offset from UTC, e.g. `2026-11-25T18:30:00+01:00`, so that
 * both the instant and the student's own day are known; bpm counts quarter notes; bars, beats and slots from 1,
 * counted from the start of the loop. Loops are in the order in which they were played.
 */
import type { WrittenPlace } from '../groove/stroke.ts';
import type { Voice } from '../kit/voice.ts';
import type { Bpm, Seconds } from '../units.ts';

/** Version of the practice log that this program writes. */
export const PRACTICE_LOG_VERSION = 1;

/**
 * What a loop was, worst first: `stumble` lost the pattern, `loose` kept it with too many strokes off, `clean`
 * needs no more work at this tempo. `unheard` says nothing about the playing.
 */
export const LOOP_VERDICTS = ['unheard', 'stumble', 'loose', 'clean'] as const;
/** How a loop was judged. */
export type LoopVerdict = (typeof LOOP_VERDICTS)[number];

/** What can be wrong: a stroke missed or added, its time, its level, or the tempo as a whole. */
export const FAULT_KINDS = ['missed', 'extra', 'early', 'late', 'loud', 'quiet', 'slow', 'fast'] as const;
/** What can be wrong with a loop. */
export type FaultKind = (typeof FAULT_KINDS)[number];

/** One thing that was wrong in a loop. */
export interface LoopFault {
  readonly kind: FaultKind;
  /** Null for the tempo as a whole. */
  readonly voice: Voice | null;
  /** Null when it holds throughout. For an extra stroke, the nearest stroke that was written. */
  readonly place: WrittenPlace | null;
  /** Milliseconds for time, decibels for level, percent for tempo, 1 for a stroke missed or added. Never negative. */
  readonly amount: number;
}

/** One time through the loop. */
export interface LoopRecord {
  readonly bpm: Bpm;
  readonly verdict: LoopVerdict;
  /** Strongest first. */
  readonly faults: readonly LoopFault[];
  /** Voices of which nobody knows whether they were played; left out where all were heard. */
  readonly unheard?: readonly Voice[];
}

/** Who can judge loops, the one whose word counts most first. */
export const HEARD_BY = ['teacher', 'ear', 'student'] as const;

/** Who judged loops: the teacher in the lesson or by a take, an ear, or the student. */
export type HeardBy = (typeof HEARD_BY)[number];

/** One stretch of playing one exercise. */
export interface PracticeEntry {
  /** Unique for ever, e.g. the device's name and a count. */
  readonly id: string;
  readonly device: string;
  readonly startedAt: string;
  readonly durationSeconds: Seconds;
  /** Lasting name of the lesson, e.g. its file name without the ending. */
  readonly lesson: string;
  /** Lasting name of the exercise (its patterns, not its number); null for the groove alone. */
  readonly exercise: string | null;
  readonly form: string;
  /** Who judged the loops. */
  readonly heardBy: HeardBy;
  readonly loops: readonly LoopRecord[];
}

/** All practice of one student. */
export interface PracticeLog {
  readonly version: number;
  /** In order of time, each id once. */
  readonly entries: readonly PracticeEntry[];
  /** Ids of entries that were taken out, so that a merge does not bring them back. */
  readonly removed: readonly string[];
}
