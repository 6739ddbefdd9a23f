/**
 * How late a known sound comes in a take, while both go on.
 *
 * Conventions: samples at the rate of both sounds; a fourth of it is looked at, which a loudspeaker's band fills.
 * Source: as in `products.ts`, over stretches of which old ones are forgotten.
 */
import { ComplexFft, energyOf } from '@shedbook/signal';
import { addProducts, findPeak, type Products, whiten } from './products.ts';

/** Samples of which one is made. */
const STEP = 4;
/** Longest delay that is looked for, in samples of the fourth rate: 0.74 s at 44 100 Hz. */
const LONGEST = 8192;
/** A delay is looked for anew after so many of them: 0.37 s. */
const HOP = 4096;
/** Share of what was before that is remembered from stretch to stretch: half is forgotten in 12 s. */
const REMEMBERED = 0.98;

/**
 * A delay is found where the correlation is so many times its root mean square: a loudspeaker 20 dB under whoever plays
 * came to 14 and more, and who plays the same as it, on drums that sound alike, to 12 now and then, never twice at one place.
 */
const STANDS_OUT = 12;
/** A take this much softer than what is known, as energy, is silence. */
const SILENT = 1e-9;

/** Sum of STEP samples from one on. */
function sumAt(samples: Float32Array, i: number): number {
  return samples[i]! + samples[i + 1]! + samples[i + 2]! + samples[i + 3]!;
}

/** Takes both sounds, in blocks of as many samples as go into STEP · HOP. */
export class DelayFinder {
  readonly #fft = new ComplexFft(2 * LONGEST);
  readonly #sum: Products = { re: new Float64Array(2 * LONGEST), im: new Float64Array(2 * LONGEST) };
  /** The last samples of the fourth rate, as far as they are written. */
  readonly #known = new Float32Array(2 * LONGEST);
  readonly #take = new Float32Array(2 * LONGEST);
  #written = 2 * LONGEST - HOP;

  /** Takes the next block. @returns the delay where one was looked for and found, in samples, else null */
  push(known: Float32Array, take: Float32Array): number | null {
    for (let i = 0; i < known.length; i += STEP) {
      this.#known[this.#written] = sumAt(known, i);
      this.#take[this.#written] = sumAt(take, i);
      this.#written += 1;
    }
    if (this.#written < 2 * LONGEST) return null;
    const found = this.#look();
    this.#known.copyWithin(0, HOP);
    this.#take.copyWithin(0, HOP);
    this.#written -= HOP;
    return found;
  }

  #look(): number | null {
    // What was played last is in the take only in part; what was played a longest delay ago is all there.
    const known = this.#known.subarray(LONGEST - HOP, LONGEST);
    const take = this.#take.subarray(LONGEST - HOP, 2 * LONGEST);
    if (energyOf(take) <= SILENT * energyOf(known) || energyOf(known) === 0) return null;
    const { re, im } = this.#sum;
    for (let k = 0; k < re.length; k += 1) {
      re[k] = REMEMBERED * re[k]!;
      im[k] = REMEMBERED * im[k]!;
    }
    addProducts(this.#fft, known, take, this.#sum);
    const white = { re: re.slice(), im: im.slice() };
    whiten(white);
    this.#fft.back(white.re, white.im);
    const found = findPeak(white.re.subarray(0, LONGEST), STANDS_OUT);
    return found === null ? null : found * STEP;
  }
}
