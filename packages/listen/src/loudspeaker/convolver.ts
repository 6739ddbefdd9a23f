/**
 * A sound through a long filter, block by block and without delay.
 *
 * Conventions: blocks of CONVOLVE_BLOCK samples; overlap-save with the filter in parts of a block each.
 * Source: T. G. Stockham, "High-speed convolution and correlation", AFIPS 28, 1966; parts of one length as in W. G.
 * Gardner, J. Audio Eng. Soc. 43(3), 1995.
 */
import { ComplexFft } from '@shedbook/signal';

/** Samples of a block: 3 ms at 44 100 Hz. */
export const CONVOLVE_BLOCK = 128;
const SIZE = 2 * CONVOLVE_BLOCK;
const BINS = CONVOLVE_BLOCK + 1;

/** A filter at work. */
export class Convolver {
  readonly #fft = new ComplexFft(SIZE);
  readonly #parts: number;
  readonly #filterRe: Float64Array;
  readonly #filterIm: Float64Array;
  /** Spectra of the last blocks, round and round. */
  readonly #soundRe: Float64Array;
  readonly #soundIm: Float64Array;
  #newest = 0;
  readonly #before = new Float64Array(CONVOLVE_BLOCK);
  readonly #re = new Float64Array(SIZE);
  readonly #im = new Float64Array(SIZE);

  /** @param samples of the filter, a multiple of CONVOLVE_BLOCK */
  constructor(samples: number) {
    this.#parts = samples / CONVOLVE_BLOCK;
    const size = this.#parts * BINS;
    this.#filterRe = new Float64Array(size);
    this.#filterIm = new Float64Array(size);
    this.#soundRe = new Float64Array(size);
    this.#soundIm = new Float64Array(size);
  }

  /** Takes another filter of the same length. */
  set(filter: Float64Array): void {
    const [re, im] = [this.#re, this.#im];
    for (let at = 0; at < filter.length; at += CONVOLVE_BLOCK) {
      re.fill(0);
      im.fill(0);
      re.set(filter.subarray(at, at + CONVOLVE_BLOCK));
      this.#fft.forward(re, im);
      const to = (at / CONVOLVE_BLOCK) * BINS;
      this.#filterRe.set(re.subarray(0, BINS), to);
      this.#filterIm.set(im.subarray(0, BINS), to);
    }
  }

  /** The next block of the filtered sound. */
  push(block: Float32Array): Float64Array {
    const [re, im] = [this.#re, this.#im];
    re.set(this.#before);
    re.set(block, CONVOLVE_BLOCK);
    im.fill(0);
    this.#before.set(block);
    this.#fft.forward(re, im);
    this.#newest = (this.#newest + this.#parts - 1) % this.#parts;
    this.#soundRe.set(re.subarray(0, BINS), this.#newest * BINS);
    this.#soundIm.set(im.subarray(0, BINS), this.#newest * BINS);
    this.#multiply(re.fill(0), im.fill(0));
    for (let k = 1; k < CONVOLVE_BLOCK; k += 1) {
      re[SIZE - k] = re[k]!;
      im[SIZE - k] = -im[k]!;
    }
    this.#fft.back(re, im);
    return re.slice(CONVOLVE_BLOCK);
  }

  #multiply(re: Float64Array, im: Float64Array): void {
    const [xr, xi, hr, hi] = [this.#soundRe, this.#soundIm, this.#filterRe, this.#filterIm];
    for (let part = 0; part < this.#parts; part += 1) {
      const h = part * BINS;
      const x = ((this.#newest + part) % this.#parts) * BINS;
      for (let k = 0; k < BINS; k += 1) {
        re[k] = re[k]! + xr[x + k]! * hr[h + k]! - xi[x + k]! * hi[h + k]!;
        im[k] = im[k]! + xr[x + k]! * hi[h + k]! + xi[x + k]! * hr[h + k]!;
      }
    }
  }
}
