/**
 * Second-order filters, and filtering in place.
 *
 * Conventions: coefficients normalised so that a0 = 1; frequencies in hertz; Q without unit.
 * Source: R. Bristow-Johnson, "Cookbook formulae for audio EQ biquad filter coefficients".
 */

/** y[n] = b0·x[n] + b1·x[n−1] + b2·x[n−2] − a1·y[n−1] − a2·y[n−2]. */
export interface Biquad {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

function angles(frequencyHz: number, q: number, sampleRateHz: number): { cos: number; alpha: number } {
  const w = (2 * Math.PI * Math.min(frequencyHz, 0.49 * sampleRateHz)) / sampleRateHz;
  return { cos: Math.cos(w), alpha: Math.sin(w) / (2 * q) };
}

/** A low-pass filter, 12 dB an octave. */
export function lowPass(frequencyHz: number, q: number, sampleRateHz: number): Biquad {
  const { cos, alpha } = angles(frequencyHz, q, sampleRateHz);
  const a0 = 1 + alpha;
  const b = (1 - cos) / 2 / a0;
  return { b0: b, b1: 2 * b, b2: b, a1: (-2 * cos) / a0, a2: (1 - alpha) / a0 };
}

/** A high-pass filter, 12 dB an octave. */
export function highPass(frequencyHz: number, q: number, sampleRateHz: number): Biquad {
  const { cos, alpha } = angles(frequencyHz, q, sampleRateHz);
  const a0 = 1 + alpha;
  const b = (1 + cos) / 2 / a0;
  return { b0: b, b1: -2 * b, b2: b, a1: (-2 * cos) / a0, a2: (1 - alpha) / a0 };
}

/** A band-pass filter with a gain of 1 at its centre. */
export function bandPass(frequencyHz: number, q: number, sampleRateHz: number): Biquad {
  const { cos, alpha } = angles(frequencyHz, q, sampleRateHz);
  const a0 = 1 + alpha;
  return { b0: alpha / a0, b1: 0, b2: -alpha / a0, a1: (-2 * cos) / a0, a2: (1 - alpha) / a0 };
}

/** Filters a buffer in place, from rest. */
export function filterInPlace(buffer: Float32Array | Float64Array, by: Biquad): void {
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  for (let i = 0; i < buffer.length; i += 1) {
    const x = buffer[i] as number;
    const y = by.b0 * x + by.b1 * x1 + by.b2 * x2 - by.a1 * y1 - by.a2 * y2;
    x2 = x1;
    x1 = x;
    y2 = y1;
    y1 = y;
    buffer[i] = y;
  }
}
