/** What the page and the thread that fits weights say to each other. */
import type { WeightFit } from '@shedbook/coach';
import type { PracticeLog } from '@shedbook/core';

/** Asks what students' practice says of the weights of a lesson. */
export interface WeightsOrder {
  /** Lasting name of the lesson. */
  readonly id: string;
  readonly text: string;
  /** One a student. */
  readonly logs: readonly PracticeLog[];
}

/** What it says; null where the lesson cannot be read. */
export type WeightsAnswer = WeightFit | null;
