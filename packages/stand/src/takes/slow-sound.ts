/**
 * Slow motion of drums: each stroke sounds as it was struck, lies as many times further from the next, and rings on until
 * then at the same pitch.
 *
 * Conventions: mono samples; seconds from the first sample; a speed of 0.5 is half as fast.
 */
import type { Hertz } from '@shedbook/core';
import { slowDown } from '@shedbook/sound';

/** The samples at another speed, at most as fast as they were played. @param onsets of the strokes, in seconds */
export function slowSamples(
  samples: Float32Array,
  onsets: readonly number[],
  { rateHz, speed }: { readonly rateHz: Hertz; readonly speed: number },
): Float32Array<ArrayBuffer> {
  const [slow] = slowDown([samples], { rateHz, speed: Math.min(1, speed), onsets });
  return slow ?? new Float32Array(samples);
}
