/**
 * Takes out what lies under the drums: traffic, a hand on the phone, and the pressure that a small room piles up.
 *
 * Such rumble is not heard but would be the loudest thing in a patch, whose levels count from its loudest moment.
 *
 * Conventions: samples at ANALYSIS_RATE, changed in place; state goes on from block to block.
 * Source: second-order Butterworth high-pass by the bilinear transform, as in R. Bristow-Johnson, "Audio EQ
 * Cookbook", W3C Note 2021, with Q = 1/√2.
 */
import { ANALYSIS_RATE } from './resample.ts';

/** Where the level is down by 3 dB, in Hz: an octave under the lowest bass drums. */
const CORNER_HZ = 25;

/** The filter with its memory. */
export class RumbleFilter {
  readonly #b: number;
  readonly #a1: number;
  readonly #a2: number;
  #x1 = 0;
  #x2 = 0;
  #y1 = 0;
  #y2 = 0;

  constructor() {
    const w = (2 * Math.PI * CORNER_HZ) / ANALYSIS_RATE;
    const alpha = Math.sin(w) * Math.SQRT1_2;
    const a0 = 1 + alpha;
    this.#b = (1 + Math.cos(w)) / 2 / a0;
    this.#a1 = (-2 * Math.cos(w)) / a0;
    this.#a2 = (1 - alpha) / a0;
  }

  /** Filters samples in place, from an index on. */
  run(samples: Float32Array, from: number, to: number): void {
    let [x1, x2, y1, y2] = [this.#x1, this.#x2, this.#y1, this.#y2];
    const [b, a1, a2] = [this.#b, this.#a1, this.#a2];
    for (let i = from; i < to; i += 1) {
      const x = samples[i]!;
      const y = b * (x - 2 * x1 + x2) - a1 * y1 - a2 * y2;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      samples[i] = y;
    }
    [this.#x1, this.#x2, this.#y1, this.#y2] = [x1, x2, y1, y2];
  }
}
