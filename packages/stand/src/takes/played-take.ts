/**
 * A take as far as it is heard beside its model.
 *
 * Conventions: seconds from the start of the recording, the latency of the devices not taken off.
 */
import type { Bpm, FullReport } from '@shedbook/core';

/** One time through the form in a take. */
export interface TakeLoop {
  readonly startSeconds: number;
  readonly endSeconds: number;
  /** Quarter notes a minute. */
  readonly bpm: Bpm;
}

/** What was played, and when. */
export interface PlayedTake {
  /** Layers of the groove that played, from 1. */
  readonly layers: number;
  readonly kind: 'audio' | 'midi';
  /** How much later than its model a stroke on the beat lies in the recording. */
  readonly latencySeconds: number;
  readonly loops: readonly TakeLoop[];
  /** Null where listening refused. */
  readonly report: FullReport | null;
}
