import type { Hertz } from '@shedbook/core';

/** Stereo sound: two channels of equal length, full scale ±1. */
export interface StereoAudio {
  readonly left: Float32Array;
  readonly right: Float32Array;
  readonly sampleRateHz: Hertz;
}
