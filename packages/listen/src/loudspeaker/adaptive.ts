/**
 * What a loudspeaker, a room and a microphone do to a known sound, learnt while it plays and somebody plays beside it.
 *
 * Conventions: mono samples of one rate, in blocks of ADAPT_BLOCK; the filter has PARTS parts of as many samples.
 * Sources: the partitioned-block frequency-domain Kalman filter (G. Enzner and P. Vary, Signal Process. 86(6), 2006;
 * F. Kuech, E. Mabande and G. Enzner, ICASSP 2014), which weighs each band by what is not known of the filter there
 * against everything else that sounds, and needs nobody to say when that is. Differs: what else sounds is never taken for
 * less than the block at hand shows, since strokes begin at once.
 */
import { ComplexFft, energyOf, quantile } from '@shedbook/signal';

/** Samples of a block: 23 ms at 44 100 Hz. */
export const ADAPT_BLOCK = 1024;
/** Parts of the filter, which is 186 ms long at 44 100 Hz. */
export const PARTS = 8;
const SIZE = 2 * ADAPT_BLOCK;
const BINS = ADAPT_BLOCK + 1;
/** How much less of the filter there is in each further part, as power. */
const FALL = 0.5;
/** Bins of a band in which the filter's power is guessed at the beginning. */
const BAND = 32;
/** So loud beside its loudest, as power, the known sound tells something of a band; and by so many of such blocks. */
const TELLS = 0.01;
const QUIETEST = 0.2;
/** Share of the filter that stays as it is from block to block: rooms change over minutes. */
const STAYS = 0.9998 ** 2;
/** How much of the blocks before counts for what else sounds. */
const REMEMBERED = 0.5;
/** Share of a block's power that no filter makes of the known sound: a small loudspeaker's distortion, and what rings longer. */
const UNLIKE = 1e-3;
const TINY = 1e-9;

interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

function spectrum(): Spectrum {
  return { re: new Float64Array(BINS), im: new Float64Array(BINS) };
}

/** The second half of a spectrum of real samples from its first. */
function mirror(re: Float64Array, im: Float64Array): void {
  for (let k = 1; k < ADAPT_BLOCK; k += 1) {
    re[SIZE - k] = re[k]!;
    im[SIZE - k] = -im[k]!;
  }
}

/** How strong a filter may be in a band, as power: the ratio of both sounds where least else sounds. */
function strengthOf(powers: readonly (readonly [Float64Array, Float64Array])[], band: number): number {
  const loudest = Math.max(0, ...powers.map(([known]) => known[band]!));
  const ratios = powers
    .filter(([known]) => known[band]! > TELLS * loudest)
    .map(([known, take]) => take[band]! / known[band]!);
  return ratios.length === 0 ? 0 : quantile(ratios, QUIETEST);
}

/** Learns a filter. */
export class AdaptiveFilter {
  readonly #fft = new ComplexFft(SIZE);
  /** Spectra of the known sound's last blocks, the newest first, each with the block before it. */
  #known: readonly Spectrum[] = Array.from({ length: PARTS }, spectrum);
  readonly #filter = Array.from({ length: PARTS }, spectrum);
  readonly #unknown = Array.from({ length: PARTS }, () => new Float64Array(BINS));
  readonly #before = new Float64Array(ADAPT_BLOCK);
  readonly #else = new Float64Array(BINS);
  readonly #doubt = new Float64Array(BINS);
  readonly #error = spectrum();
  readonly #changes = [spectrum(), spectrum()] as const;
  readonly #re = new Float64Array(SIZE);
  readonly #im = new Float64Array(SIZE);

  /**
   * Guesses how strong the filter is, band by band: never stronger than the blocks in which least else sounds show. Both
   * sounds are stretches of the same samples.
   */
  guess(known: Float32Array, take: Float32Array): void {
    const powers: (readonly [Float64Array, Float64Array])[] = [];
    for (let at = 0; at + SIZE <= known.length; at += ADAPT_BLOCK)
      powers.push(this.#powersOf(known.subarray(at, at + SIZE), take.subarray(at, at + SIZE)));
    const sum = (1 - FALL ** PARTS) / (1 - FALL);
    for (let k = 0; k < BINS; k += 1) {
      const band = Math.floor(k / BAND);
      const strength = k % BAND === 0 ? strengthOf(powers, band) / sum : this.#unknown[0]![k - 1]!;
      for (const [part, unknown] of this.#unknown.entries()) unknown[k] = strength * FALL ** part;
    }
  }

  /** Powers of a stretch of both sounds, band by band. */
  #powersOf(known: Float32Array, take: Float32Array): readonly [Float64Array, Float64Array] {
    const [re, im] = [this.#re, this.#im];
    re.set(known);
    im.set(take);
    this.#fft.forward(re, im);
    const bands = Math.ceil(BINS / BAND);
    const powers = [new Float64Array(bands), new Float64Array(bands)] as const;
    for (let k = 1; k < ADAPT_BLOCK; k += 1) {
      const [m, band] = [SIZE - k, Math.floor(k / BAND)];
      powers[0][band] = powers[0][band]! + (re[k]! + re[m]!) ** 2 + (im[k]! - im[m]!) ** 2;
      powers[1][band] = powers[1][band]! + (im[k]! + im[m]!) ** 2 + (re[m]! - re[k]!) ** 2;
    }
    return powers;
  }

  /**
   * Learns from the next block of both sounds.
   * @returns the power of what the filter may have left in the block, as it knows itself, summed over its samples
   */
  push(known: Float32Array, take: Float32Array): number {
    this.#enter(known);
    this.#leave(take);
    this.#weighDoubt();
    this.#noteElse(UNLIKE * energyOf(take));
    this.#learn();
    return this.#doubt.reduce((sum, power) => sum + power, 0) / SIZE;
  }

  /** Samples of the filter. */
  samples(): Float64Array {
    const samples = new Float64Array(PARTS * ADAPT_BLOCK);
    for (let part = 0; part < PARTS; part += 2) {
      this.#join(this.#filter[part]!, this.#filter[part + 1]!);
      this.#fft.back(this.#re, this.#im);
      samples.set(this.#re.subarray(0, ADAPT_BLOCK), part * ADAPT_BLOCK);
      samples.set(this.#im.subarray(0, ADAPT_BLOCK), (part + 1) * ADAPT_BLOCK);
    }
    return samples;
  }

  #enter(known: Float32Array): void {
    this.#re.set(this.#before);
    this.#re.set(known, ADAPT_BLOCK);
    this.#im.fill(0);
    this.#before.set(known);
    this.#fft.forward(this.#re, this.#im);
    const oldest = this.#known.at(-1)!;
    oldest.re.set(this.#re.subarray(0, BINS));
    oldest.im.set(this.#im.subarray(0, BINS));
    this.#known = [oldest, ...this.#known.slice(0, -1)];
  }

  /** What the filter leaves of the take, as a spectrum. */
  #leave(take: Float32Array): void {
    const [re, im] = [this.#re.fill(0), this.#im.fill(0)];
    this.#known.forEach((x, part) => {
      const h = this.#filter[part]!;
      for (let k = 0; k < BINS; k += 1) {
        re[k] = re[k]! + x.re[k]! * h.re[k]! - x.im[k]! * h.im[k]!;
        im[k] = im[k]! + x.re[k]! * h.im[k]! + x.im[k]! * h.re[k]!;
      }
    });
    mirror(re, im);
    this.#fft.back(re, im);
    for (let i = 0; i < ADAPT_BLOCK; i += 1) {
      re[ADAPT_BLOCK + i] = take[i]! - re[ADAPT_BLOCK + i]!;
      re[i] = 0;
    }
    im.fill(0);
    this.#fft.forward(re, im);
    this.#error.re.set(re.subarray(0, BINS));
    this.#error.im.set(im.subarray(0, BINS));
  }

  /** Power, bin by bin, of what may be left since the filter is not known any better. */
  #weighDoubt(): void {
    const doubt = this.#doubt.fill(0);
    this.#known.forEach((x, part) => {
      const unknown = this.#unknown[part]!;
      for (let k = 0; k < BINS; k += 1) doubt[k] = doubt[k]! + unknown[k]! * (x.re[k]! ** 2 + x.im[k]! ** 2);
    });
  }

  /** @param least power in each bin of what no filter can make of the known sound */
  #noteElse(least: number): void {
    const { re, im } = this.#error;
    for (let k = 0; k < BINS; k += 1) {
      const now = least + re[k]! ** 2 + im[k]! ** 2;
      this.#else[k] = Math.max(now, REMEMBERED * this.#else[k]! + (1 - REMEMBERED) * now);
    }
  }

  /** Learns two parts at a time: their changes are real samples, which one transform takes as its two halves. */
  #learn(): void {
    for (let part = 0; part < PARTS; part += 2) {
      const first = this.#changeOf(part);
      const second = this.#changeOf(part + 1);
      this.#confine(first, second);
      this.#change(part, first);
      this.#change(part + 1, second);
    }
  }

  #changeOf(part: number): Spectrum {
    const [error, doubt] = [this.#error, this.#doubt];
    const [x, h, unknown] = [this.#known[part]!, this.#filter[part]!, this.#unknown[part]!];
    const { re, im } = this.#changes[part % 2]!;
    for (let k = 0; k < BINS; k += 1) {
      const step = unknown[k]! / (doubt[k]! + 2 * this.#else[k]! + TINY);
      const [xr, xi, er, ei] = [x.re[k]!, x.im[k]!, error.re[k]!, error.im[k]!];
      re[k] = step * (xr * er + xi * ei);
      im[k] = step * (xr * ei - xi * er);
      const known = 1 - (step * (xr ** 2 + xi ** 2)) / 2;
      unknown[k] = STAYS * known * unknown[k]! + (1 - STAYS) * (h.re[k]! ** 2 + h.im[k]! ** 2);
    }
    return this.#changes[part % 2]!;
  }

  /** Leaves of two changes what falls into the samples of one part. */
  #confine(first: Spectrum, second: Spectrum): void {
    const [re, im] = [this.#re, this.#im];
    this.#join(first, second);
    this.#fft.back(re, im);
    re.fill(0, ADAPT_BLOCK);
    im.fill(0, ADAPT_BLOCK);
    this.#fft.forward(re, im);
    for (let k = 0; k < BINS; k += 1) {
      const m = (SIZE - k) % SIZE;
      first.re[k] = (re[k]! + re[m]!) / 2;
      first.im[k] = (im[k]! - im[m]!) / 2;
      second.re[k] = (im[k]! + im[m]!) / 2;
      second.im[k] = (re[m]! - re[k]!) / 2;
    }
  }

  /** Two spectra of real samples as one, whose real and imaginary samples those are. */
  #join(first: Spectrum, second: Spectrum): void {
    const [re, im] = [this.#re, this.#im];
    for (let k = 0; k < BINS; k += 1) {
      re[k] = first.re[k]! - second.im[k]!;
      im[k] = first.im[k]! + second.re[k]!;
      if (k === 0 || k === ADAPT_BLOCK) continue;
      re[SIZE - k] = first.re[k]! + second.im[k]!;
      im[SIZE - k] = second.re[k]! - first.im[k]!;
    }
  }

  #change(part: number, by: Spectrum): void {
    const h = this.#filter[part]!;
    for (let k = 0; k < BINS; k += 1) {
      h.re[k] = h.re[k]! + by.re[k]!;
      h.im[k] = h.im[k]! + by.im[k]!;
    }
  }
}
