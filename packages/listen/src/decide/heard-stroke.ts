/** A stroke of a take, placed in what is written or not. Seconds from the take's first sample. */
import type { Voice } from '@shedbook/core';
import type { Place } from './places.ts';

/** A stroke that was heard. */
export interface HeardStroke {
  readonly voice: Voice;
  readonly timeSeconds: number;
  readonly levelDb: number;
  readonly place: Place | null;
  /** 0 to 1. */
  readonly confidence: number;
}
