/**
 * A second-order high-pass that goes on from block to block.
 *
 * Source: the bilinear transform as in R. Bristow-Johnson, "Audio EQ Cookbook", W3C Note 2021.
 */

/** The filter with its memory. */
export class HighPass {
  readonly #b: number;
  readonly #a1: number;
  readonly #a2: number;
  #x1 = 0;
  #x2 = 0;
  #y1 = 0;
  #y2 = 0;

  /** @param q 1/√2 for a Butterworth filter of its own. */
  constructor(sampleRateHz: number, cornerHz: number, q: number) {
    const w = (2 * Math.PI * cornerHz) / sampleRateHz;
    const alpha = Math.sin(w) / (2 * q);
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
