/** The beginning of a take, kept as it comes in, at most as long as it takes to know a machine by. Samples at ANALYSIS_RATE. */
import { ANALYSIS_RATE } from '../../signal/bands.data.ts';

/** So much is kept: four megabytes, whatever the take’s length. */
const KEPT_SECONDS = 45;

/** Keeps the first samples of a stream. */
export class FirstSound {
  readonly #pieces: Float32Array[] = [];
  #count = 0;

  /** Takes the next samples; those that come too late are not kept. */
  push(samples: Float32Array): void {
    const most = KEPT_SECONDS * ANALYSIS_RATE - this.#count;
    if (most <= 0 || samples.length === 0) return;
    const piece = samples.slice(0, most);
    this.#pieces.push(piece);
    this.#count += piece.length;
  }

  /** All that was kept, as one. */
  samples(): Float32Array {
    const all = new Float32Array(this.#count);
    let at = 0;
    for (const piece of this.#pieces) {
      all.set(piece, at);
      at += piece.length;
    }
    return all;
  }
}
