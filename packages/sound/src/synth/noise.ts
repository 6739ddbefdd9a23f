/**
 * Noise with a shape, and the pulse of a stick or beater.
 *
 * Conventions: seconds and hertz; noise is uniform in −1…1 before it is shaped; everything starts at sample 0.
 */

import type { Random } from '@shedbook/core';
import { type Biquad, easePerSample, fallPerSample, filterInPlace, hann } from '@shedbook/signal';

/** White noise in −1…1, `length` samples. */
export function whiteNoise(length: number, random: Random): Float32Array {
  const noise = new Float32Array(length);
  for (let i = 0; i < length; i += 1) noise[i] = 2 * random.next() - 1;
  return noise;
}

/** How a burst of noise rises and dies. */
export interface Burst {
  /** Factor of the noise at its height. */
  readonly gain: number;
  /** Time constant of the rise. */
  readonly riseSeconds: number;
  readonly t60Seconds: number;
  readonly filters: readonly Biquad[];
}

/** Adds a burst of filtered noise to a buffer. */
export function addBurst(out: Float32Array, sampleRateHz: number, burst: Burst, random: Random): void {
  const length = Math.min(out.length, Math.ceil(burst.t60Seconds * 1.3 * sampleRateHz));
  const noise = whiteNoise(length, random);
  for (const filter of burst.filters) filterInPlace(noise, filter);
  const rise = burst.riseSeconds > 0 ? easePerSample(burst.riseSeconds, sampleRateHz) : 0;
  const fall = fallPerSample(burst.t60Seconds, sampleRateHz);
  let lacking = rise;
  let level = burst.gain;
  for (let i = 0; i < length; i += 1) {
    out[i] = (out[i] as number) + (noise[i] as number) * level * (1 - lacking);
    lacking *= rise;
    level *= fall;
  }
}

/** Adds the push of a contact: one raised-cosine pulse, `widthSeconds` long. */
export function addPulse(out: Float32Array, sampleRateHz: number, widthSeconds: number, gain: number): void {
  const width = Math.max(2, Math.round(widthSeconds * sampleRateHz));
  for (let i = 0; i < width && i < out.length; i += 1) {
    out[i] = (out[i] as number) + gain * hann((i + 0.5) / width);
  }
}

/** Lets a buffer die away over its last `seconds`, so that it ends in silence. */
export function fadeEnd(buffer: Float32Array, sampleRateHz: number, seconds: number): void {
  const length = Math.min(buffer.length, Math.round(seconds * sampleRateHz));
  for (let i = 0; i < length; i += 1) {
    const at = buffer.length - 1 - i;
    buffer[at] = ((buffer[at] as number) * i) / length;
  }
}
