/**
 * How loud an event is, band by band: what levels of strokes are measured from.
 *
 * Conventions: K-weighted mean squares over the 100 ms from the event and over the 46 ms before it, in dB; twelve bands
 * of three long bands each, and one of what lies above the analysed ones.
 */
import { kWeight, powerToDb } from '@shedbook/signal';
import { ANALYSIS_RATE, LONG_BANDS, LONG_EDGES, LONG_SIZE } from '../signal/bands.data.ts';
import type { HighBand } from '../signal/high-band.ts';

const LONG_BANDS_OF_ONE = 3;
/** Bands of an event's energy. */
export const ENERGY_BANDS = LONG_BANDS / LONG_BANDS_OF_ONE + 1;
const HIGH = ENERGY_BANDS - 1;
/** Share of each long frame in the 100 ms from the event: half of the first lies before them, of the last after. */
const AFTER = [0, 0, 1, 1, 1, 1, 0.5] as const;
/** The long frame that ends with the event. */
const BEFORE = 1;
/** Power of a frame, summed over bins, for a mean square of 1: the mean of Hann² is 3/8. */
const FRAME_POWER = 0.75;
/** Frames whose sum is the mean over the 100 ms: four whole ones, of which the edges' outer halves hold nothing. */
const FRAMES = 4;
/** Short frames of the 100 ms after an event, and before it. */
const HIGH_AFTER = 34;
const HIGH_BEFORE = [-16, -2] as const;
/** K-weighting above the analysed band is flat. */
const HIGH_WEIGHT = kWeight(14_000);
const TINY = 1e-12;

/** Weight of each bin, and the band that it belongs to. */
const WEIGHTS = Float64Array.from({ length: LONG_SIZE / 2 + 1 }, (_, bin) => {
  const hz = (bin * ANALYSIS_RATE) / LONG_SIZE;
  return bin === 0 ? 0 : kWeight(hz) / FRAME_POWER;
});

/** Gathers the energy of one event after the other. */
export class EventEnergy {
  readonly #high: HighBand | null;
  readonly #after = new Float64Array(ENERGY_BANDS);
  readonly #before = new Float64Array(ENERGY_BANDS);

  constructor(high: HighBand | null) {
    this.#high = high;
  }

  /** Adds the power spectrum of one of the event's long frames. @param index of the frame, in order */
  add(index: number, power: Float64Array): void {
    const share = AFTER[index]! / FRAMES;
    if (share === 0 && index !== BEFORE) return;
    const to = index === BEFORE ? this.#before : this.#after;
    const weight = index === BEFORE ? 1 : share;
    for (let band = 0; band < LONG_BANDS; band += 1) {
      let sum = 0;
      for (let bin = LONG_EDGES[band]!; bin < LONG_EDGES[band + 1]!; bin += 1)
        sum += WEIGHTS[bin]! * power[bin]!;
      to[Math.floor(band / LONG_BANDS_OF_ONE)]! += weight * sum;
    }
  }

  /** The energy of the event at a short frame, in dB: after it, then before it. The next event begins. */
  take(frame: number): Float32Array {
    const [from, to] = HIGH_BEFORE;
    this.#after[HIGH] = HIGH_WEIGHT * (this.#high?.between(frame, frame + HIGH_AFTER) ?? 0);
    this.#before[HIGH] = HIGH_WEIGHT * (this.#high?.between(frame + from, frame + to) ?? 0);
    const energyDb = new Float32Array(2 * ENERGY_BANDS);
    for (let band = 0; band < ENERGY_BANDS; band += 1) {
      energyDb[band] = powerToDb(this.#after[band]! + TINY);
      energyDb[ENERGY_BANDS + band] = powerToDb(this.#before[band]! + TINY);
    }
    this.#after.fill(0);
    this.#before.fill(0);
    return energyDb;
  }
}
