/**
 * A sound through a long filter, block by block and without delay.
 *
 * Conventions: blocks of CONVOLVE_BLOCK samples; overlap-save with the beginning of the filter in parts of a block each,
 * and the rest in parts of FAR_BLOCK, of which the next samples are known as soon as those before them.
 * Source: T. G. Stockham, "High-speed convolution and correlation", AFIPS 28, 1966; parts of two lengths as in W. G.
 * Gardner, J. Audio Eng. Soc. 43(3), 1995.
 */
import { ComplexFft } from '@shedbook/signal';

/** Samples of a block: 3 ms at 44 100 Hz. */
export const CONVOLVE_BLOCK = 128;
/** Samples of a later part. */
export const FAR_BLOCK = 1024;

/** A filter in parts of one length. */
class Parts {
  readonly #block: number;
  readonly #bins: number;
  readonly #fft: ComplexFft;
  readonly #count: number;
  readonly #filterRe: Float64Array;
  readonly #filterIm: Float64Array;
  /** Spectra of the last blocks, round and round. */
  readonly #soundRe: Float64Array;
  readonly #soundIm: Float64Array;
  #newest = 0;
  readonly #before: Float64Array;
  readonly #re: Float64Array;
  readonly #im: Float64Array;

  /** @param count how many parts there are, of `block` samples each */
  constructor(count: number, block: number) {
    this.#block = block;
    this.#bins = block + 1;
    this.#fft = new ComplexFft(2 * block);
    this.#count = count;
    const size = count * this.#bins;
    this.#filterRe = new Float64Array(size);
    this.#filterIm = new Float64Array(size);
    this.#soundRe = new Float64Array(size);
    this.#soundIm = new Float64Array(size);
    this.#before = new Float64Array(block);
    this.#re = new Float64Array(2 * block);
    this.#im = new Float64Array(2 * block);
  }

  /** Takes another filter, as long as all parts. */
  set(filter: Float64Array): void {
    const [re, im] = [this.#re, this.#im];
    for (let part = 0; part < this.#count; part += 1) {
      re.fill(0);
      im.fill(0);
      re.set(filter.subarray(part * this.#block, (part + 1) * this.#block));
      this.#fft.forward(re, im);
      this.#filterRe.set(re.subarray(0, this.#bins), part * this.#bins);
      this.#filterIm.set(im.subarray(0, this.#bins), part * this.#bins);
    }
  }

  /** Writes into `to` what all parts make of the sound, the newest block of which meets the first. */
  push(block: Float32Array, to: Float64Array): void {
    const [re, im] = [this.#re, this.#im];
    const size = 2 * this.#block;
    re.set(this.#before);
    re.set(block, this.#block);
    im.fill(0);
    this.#before.set(block);
    this.#fft.forward(re, im);
    this.#newest = (this.#newest + this.#count - 1) % this.#count;
    this.#soundRe.set(re.subarray(0, this.#bins), this.#newest * this.#bins);
    this.#soundIm.set(im.subarray(0, this.#bins), this.#newest * this.#bins);
    this.#multiply(re.fill(0), im.fill(0));
    for (let k = 1; k < this.#block; k += 1) {
      re[size - k] = re[k]!;
      im[size - k] = -im[k]!;
    }
    this.#fft.back(re, im);
    to.set(re.subarray(this.#block));
  }

  #multiply(re: Float64Array, im: Float64Array): void {
    const [xr, xi, hr, hi] = [this.#soundRe, this.#soundIm, this.#filterRe, this.#filterIm];
    const bins = this.#bins;
    for (let part = 0; part < this.#count; part += 1) {
      const h = part * bins;
      const x = ((this.#newest + part) % this.#count) * bins;
      for (let k = 0; k < bins; k += 1) {
        re[k] = re[k]! + xr[x + k]! * hr[h + k]! - xi[x + k]! * hi[h + k]!;
        im[k] = im[k]! + xr[x + k]! * hi[h + k]! + xi[x + k]! * hr[h + k]!;
      }
    }
  }
}

/** A filter at work. */
export class Convolver {
  readonly #near = new Parts(FAR_BLOCK / CONVOLVE_BLOCK, CONVOLVE_BLOCK);
  readonly #far: Parts;
  /** What the later parts make of the samples before, for the next FAR_BLOCK. */
  readonly #late = new Float64Array(FAR_BLOCK);
  readonly #sound = new Float32Array(FAR_BLOCK);
  #count = 0;

  /** @param samples of the filter, a multiple of FAR_BLOCK from twice that on */
  constructor(samples: number) {
    this.#far = new Parts(samples / FAR_BLOCK - 1, FAR_BLOCK);
  }

  /** Takes another filter of the same length; what comes late in it is heard from the next FAR_BLOCK on. */
  set(filter: Float64Array): void {
    this.#near.set(filter);
    this.#far.set(filter.subarray(FAR_BLOCK));
  }

  /** The next block of the filtered sound. */
  push(block: Float32Array): Float64Array {
    if (this.#count === FAR_BLOCK) {
      this.#far.push(this.#sound, this.#late);
      this.#count = 0;
    }
    const sound = new Float64Array(CONVOLVE_BLOCK);
    this.#near.push(block, sound);
    for (let i = 0; i < CONVOLVE_BLOCK; i += 1) sound[i] = sound[i]! + this.#late[this.#count + i]!;
    this.#sound.set(block, this.#count);
    this.#count += CONVOLVE_BLOCK;
    return sound;
  }
}
