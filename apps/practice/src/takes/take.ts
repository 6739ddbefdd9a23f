/**
 * A take: what a student played in one stretch, and what came of it.
 *
 * Conventions: seconds from the start of the recording, the latency of the devices not taken off; plain data.
 */
import type { FullReport, Limb, LoopRecord } from '@shedbook/core';
import type { RefusalFact } from '@shedbook/listen';
import type { TakeLoop } from '@shedbook/stand/takes';

export type { TakeLoop };

/** A take, without its sound. */
export interface Take {
  readonly id: string;
  /** A moment, as in the log. */
  readonly startedAt: string;
  /** Lasting name of the lesson. */
  readonly lesson: string;
  readonly lessonTitle: string;
  /** Lasting name of the exercise, or null for the groove alone. */
  readonly exercise: string | null;
  /** Its number on the sheet when it was played. */
  readonly number: number | null;
  readonly form: string;
  /** Layers of the groove that played, from 1. */
  readonly layers: number;
  /** Limbs that the student played; all of them where left out, as in takes that were kept before it was told. */
  readonly mine?: readonly Limb[];
  readonly kind: 'audio' | 'midi';
  readonly durationSeconds: number;
  /** How much later than its model a stroke on the beat lies in the recording. */
  readonly latencySeconds: number;
  readonly loops: readonly TakeLoop[];
  /** Verdicts on the loops, as they were given. */
  readonly verdicts: readonly LoopRecord[];
  /** Null where listening refused. */
  readonly report: FullReport | null;
  /** Why there is no report; null where there is one. */
  readonly refused?: RefusalFact | null;
  /** The same as pages before this one kept it: a sentence, in English. */
  readonly refusal?: string | null;
  /** Size of the sound in bytes; 0 for a kit, whose strokes are in the report. */
  readonly audioBytes: number;
}

/** A take with its sound. */
export interface WholeTake {
  readonly take: Take;
  readonly audio: Blob | null;
}
