/**
 * Second-order filters, and filtering in place.
 *
 * Conventions: coefficients normalised so that a0 = 1; frequencies in hertz, above 49 % of the rate taken as that; Q
 * without unit, 1/√2 for a Butterworth filter of its own.
 * Source: R. Bristow-Johnson, "Audio EQ Cookbook", W3C Note 2021.
 */

/** y[n] = b0·x[n] + b1·x[n−1] + b2·x[n−2] − a1·y[n−1] − a2·y[n−2]. */
export interface Biquad {
  /** Weight of this sample. */
  readonly b0: number;
  /** Weight of the sample before. */
  readonly b1: number;
  /** Weight of the sample before that. */
  readonly b2: number;
  /** Weight of the result before. */
  readonly a1: number;
  /** Weight of the result before that. */
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

/** Gain of power of a filter at a frequency. */
export function powerResponse(by: Biquad, frequencyHz: number, sampleRateHz: number): number {
  const w = (2 * Math.PI * frequencyHz) / sampleRateHz;
  const [c1, s1, c2, s2] = [Math.cos(w), Math.sin(w), Math.cos(2 * w), Math.sin(2 * w)];
  const zeros = (by.b0 + by.b1 * c1 + by.b2 * c2) ** 2 + (by.b1 * s1 + by.b2 * s2) ** 2;
  const poles = (1 + by.a1 * c1 + by.a2 * c2) ** 2 + (by.a1 * s1 + by.a2 * s2) ** 2;
  return zeros / poles;
}

/** A filter that goes on from block to block, at rest before the first. */
export class RunningFilter {
  readonly #by: Biquad;
  #x1 = 0;
  #x2 = 0;
  #y1 = 0;
  #y2 = 0;

  constructor(by: Biquad) {
    this.#by = by;
  }

  /** Filters samples in place, from one index to another, the end not included. */
  run(samples: Float32Array | Float64Array, from: number, to: number): void {
    const { b0, b1, b2, a1, a2 } = this.#by;
    let [x1, x2, y1, y2] = [this.#x1, this.#x2, this.#y1, this.#y2];
    for (let i = from; i < to; i += 1) {
      const x = samples[i] as number;
      const y = b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      samples[i] = y;
    }
    [this.#x1, this.#x2, this.#y1, this.#y2] = [x1, x2, y1, y2];
  }
}

/** Filters a buffer in place, from rest. */
export function filterInPlace(buffer: Float32Array | Float64Array, by: Biquad): void {
  new RunningFilter(by).run(buffer, 0, buffer.length);
}
