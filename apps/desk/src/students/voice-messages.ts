/** What the page and the thread that makes a file of a spoken note say to each other. */
import type { Hertz } from '@shedbook/core';

/** What is made into a file. */
export interface SpokenOrder {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: Hertz;
}
