/**
 * Where something begins: a cheap first look that names every moment worth a closer one.
 *
 * Conventions: one value each SHORT_HOP samples, in dB of rise averaged over bands; levels under 75 dB below the
 * loudest of the last seconds count as silence.
 * Source: S. Böck and G. Widmer, "Maximum filter vibrato suppression for onset detection" (SuperFlux), DAFx 2013:
 * the rise of each band over the largest of its neighbours some frames before. Differs: rectangular bands, power
 * in dB, and a second function of the four lowest bands alone, since a soft bass drum is lost in the sum.
 */
import { SHORT_BANDS } from '../signal/bands.data.ts';

/** Frames between the two that are compared: 8.7 ms. */
const LAG = 3;
/** Rises over this count no more, in dB. */
const MOST_DB = 15;
const LOW_BANDS = 4;
/** Frames on each side over which a peak is the highest: 11.6 ms. */
export const PEAK_REACH = 4;
/** Frames of memory of the mean that a peak must stand out from: 0.7 s. */
const MEAN_FRAMES = 240;

interface Track {
  readonly recent: Float64Array;
  mean: number;
  readonly least: number;
  readonly times: number;
}

/** Finds the peaks of novelty in a stream of frames of band levels. */
export class NoveltyPeaks {
  readonly #history = new Float64Array((LAG + 1) * SHORT_BANDS);
  readonly #tracks: readonly Track[] = [
    { recent: new Float64Array(2 * PEAK_REACH + 1), mean: 3, least: 1.3, times: 2 },
    { recent: new Float64Array(2 * PEAK_REACH + 1), mean: 3, least: 4, times: 2.5 },
  ];
  #frame = -1;
  #loudest = -120;
  #lastPeak = -100;

  /**
   * Takes the next frame's band levels.
   * @returns whether the frame PEAK_REACH frames back is a peak.
   */
  push(levelsDb: Float64Array, at: number): boolean {
    this.#frame += 1;
    const slots = LAG + 1;
    const now = (this.#frame % slots) * SHORT_BANDS;
    const before = ((this.#frame + 1) % slots) * SHORT_BANDS;
    let top = -200;
    for (let band = 0; band < SHORT_BANDS; band += 1) top = Math.max(top, levelsDb[at + band]!);
    this.#loudest = Math.max(top, this.#loudest - 0.005);
    const floor = this.#loudest - 75;
    const history = this.#history;
    for (let band = 0; band < SHORT_BANDS; band += 1) {
      history[now + band] = Math.max(floor, levelsDb[at + band]!);
    }
    let all = 0;
    let low = 0;
    if (this.#frame >= LAG) {
      for (let band = 0; band < SHORT_BANDS; band += 1) {
        let was = history[before + band]!;
        if (band > 0) was = Math.max(was, history[before + band - 1]!);
        if (band + 1 < SHORT_BANDS) was = Math.max(was, history[before + band + 1]!);
        const rise = Math.min(MOST_DB, Math.max(0, history[now + band]! - was));
        all += rise;
        if (band < LOW_BANDS)
          low += Math.min(MOST_DB, Math.max(0, history[now + band]! - history[before + band]!));
      }
    }
    const [full, bottom] = this.#tracks as [Track, Track];
    const isFull = this.#isPeak(full, all / SHORT_BANDS);
    const isBottom = this.#isPeak(bottom, low / LOW_BANDS);
    const near = this.#frame - this.#lastPeak <= PEAK_REACH;
    if (!isFull && (!isBottom || near)) return false;
    this.#lastPeak = this.#frame;
    return true;
  }

  #isPeak(track: Track, value: number): boolean {
    const size = track.recent.length;
    track.recent[this.#frame % size] = value;
    track.mean += (value - track.mean) / MEAN_FRAMES;
    const centre = this.#frame - PEAK_REACH;
    if (centre < 0) return false;
    const height = track.recent[centre % size]!;
    if (height < track.least || height < track.mean * track.times) return false;
    for (let back = 0; back < size; back += 1) {
      const frame = this.#frame - back;
      if (frame < 0 || frame === centre) continue;
      const other = track.recent[frame % size]!;
      if (other > height || (other === height && frame < centre)) return false;
    }
    return true;
  }
}
