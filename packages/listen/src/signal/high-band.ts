/**
 * How much of a recording lies above what is analysed: cymbals have a good part of their loudness there.
 *
 * Conventions: samples at the rate of the recording; mean squares of frames as long as SHORT_HOP samples at
 * ANALYSIS_RATE; the last eleven seconds are remembered.
 * Source: the two second-order filters of a fourth-order Butterworth high-pass.
 */
import { highPass, RunningFilter } from '@shedbook/signal';
import { ANALYSIS_RATE, SHORT_HOP } from './bands.data.ts';

/** Where the analysis ends, in Hz. */
const CORNER_HZ = ANALYSIS_RATE / 2;
/** The quality of each of the two filters. */
const QUALITIES = [0.5412, 1.3066] as const;
const KEPT_FRAMES = 4096;

/** Adds the squares of some samples, one after the other, to a sum. */
function addSquares(sum: number, samples: Float32Array, from: number, to: number): number {
  let all = sum;
  for (let i = from; i < to; i += 1) all += samples[i]! * samples[i]!;
  return all;
}

/** Follows the band above the analysed one. */
export class HighBand {
  readonly #frameSamples: number;
  /** None where the recording ends no higher than the analysis. */
  readonly #filters: readonly RunningFilter[];
  readonly #frames = new Float64Array(KEPT_FRAMES);
  #sum = 0;
  #position = 0;
  #frame = 0;

  constructor(sampleRateHz: number) {
    this.#frameSamples = (SHORT_HOP * sampleRateHz) / ANALYSIS_RATE;
    const wide = sampleRateHz > 2.2 * CORNER_HZ;
    this.#filters = wide ? QUALITIES.map((q) => new RunningFilter(highPass(CORNER_HZ, q, sampleRateHz))) : [];
  }

  /** Takes the next samples. */
  push(samples: Float32Array): void {
    if (this.#filters.length === 0) return;
    const filtered = samples.slice();
    for (const filter of this.#filters) filter.run(filtered, 0, filtered.length);
    for (let from = 0; from < filtered.length; ) {
      const end = Math.round((this.#frame + 1) * this.#frameSamples) - this.#position;
      const to = Math.min(filtered.length, from + end);
      this.#sum = addSquares(this.#sum, filtered, from, to);
      this.#position += to - from;
      if (to - from === end) this.#endFrame();
      from = to;
    }
  }

  #endFrame(): void {
    this.#frames[this.#frame % KEPT_FRAMES] = this.#sum / this.#frameSamples;
    this.#sum = 0;
    this.#frame += 1;
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
