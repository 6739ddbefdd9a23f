/**
 * How much of a recording lies above what is analysed: cymbals have a good part of their loudness there.
 *
 * Conventions: samples at the rate of the recording; mean squares of frames as long as SHORT_HOP samples at
 * ANALYSIS_RATE; the last eleven seconds are remembered.
 * Source: fourth-order Butterworth high-pass, two second-order filters as in R. Bristow-Johnson, "Audio EQ
 * Cookbook", W3C Note 2021.
 */
import { SHORT_HOP } from './bands.data.ts';
import { ANALYSIS_RATE } from './resample.ts';

/** Where the analysis ends, in Hz. */
const CORNER_HZ = ANALYSIS_RATE / 2;
const KEPT_FRAMES = 4096;

/** One second-order high-pass with its memory. */
class HighPass {
  readonly #b: number;
  readonly #a1: number;
  readonly #a2: number;
  #s1 = 0;
  #s2 = 0;

  constructor(sampleRateHz: number, q: number) {
    const w = (2 * Math.PI * CORNER_HZ) / sampleRateHz;
    const alpha = Math.sin(w) / (2 * q);
    const a0 = 1 + alpha;
    this.#b = (1 + Math.cos(w)) / 2 / a0;
    this.#a1 = (-2 * Math.cos(w)) / a0;
    this.#a2 = (1 - alpha) / a0;
  }

  next(x: number): number {
    const y = this.#b * x + this.#s1;
    this.#s1 = -2 * this.#b * x - this.#a1 * y + this.#s2;
    this.#s2 = this.#b * x - this.#a2 * y;
    return y;
  }
}

/** Follows the band above the analysed one. */
export class HighBand {
  readonly #frameSamples: number;
  /** None where the recording ends no higher than the analysis. */
  readonly #filters: readonly [HighPass, HighPass] | null;
  readonly #frames = new Float64Array(KEPT_FRAMES);
  #sum = 0;
  #position = 0;
  #frame = 0;

  constructor(sampleRateHz: number) {
    this.#frameSamples = (SHORT_HOP * sampleRateHz) / ANALYSIS_RATE;
    const wide = sampleRateHz > 2.2 * CORNER_HZ;
    this.#filters = wide ? [new HighPass(sampleRateHz, 0.5412), new HighPass(sampleRateHz, 1.3066)] : null;
  }

  /** Takes the next samples. */
  push(samples: Float32Array): void {
    if (!this.#filters) return;
    const [first, second] = this.#filters;
    let end = Math.round((this.#frame + 1) * this.#frameSamples);
    for (const sample of samples) {
      const high = second.next(first.next(sample));
      this.#sum += high * high;
      this.#position += 1;
      if (this.#position < end) continue;
      this.#frames[this.#frame % KEPT_FRAMES] = this.#sum / this.#frameSamples;
      this.#sum = 0;
      this.#frame += 1;
      end = Math.round((this.#frame + 1) * this.#frameSamples);
    }
  }

  /** Mean square from one frame to another, the end not included; 0 of what is not remembered or not there yet. */
  between(from: number, to: number): number {
    let sum = 0;
    for (
      let frame = Math.max(0, from, this.#frame - KEPT_FRAMES);
      frame < Math.min(to, this.#frame);
      frame += 1
    )
      sum += this.#frames[frame % KEPT_FRAMES]!;
    return sum / (to - from);
  }
}
