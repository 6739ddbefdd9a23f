/**
 * Power spectra of real frames.
 *
 * Conventions: frames of a power of four of samples; power is |Σ w(n)·x(n)·e^(−2πi·kn/N)|²·4/N², so that under the
 * periodic Hann window a full-scale sine at a bin's centre has power 1/4, for any frame size; bins 0 to size/2.
 * Source: Cooley–Tukey of radix 4 on half the length, even and odd samples as real and imaginary parts, with the usual
 * split of such a packed transform; the last step, of radix 2, is taken together with the split.
 */
import { joinFours } from './stages.ts';
import { hann } from './windows.ts';

/** Most samples in a frame. */
const LONGEST = 16_384;

// What is transformed; memory that never moves is quicker to reach than that of an object.
const re = new Float64Array(LONGEST / 2);
const im = new Float64Array(LONGEST / 2);
const VALUES = [re, im] as const;

/** Power spectra of frames of one size. */
export class PowerSpectrum {
  readonly size: number;
  /** The window, scaled so that the power comes out as it should. */
  readonly #window: Float64Array;
  readonly #cos: Float64Array;
  readonly #sin: Float64Array;
  /** For every fourth place of the transform the sample pair that it begins with, in order of reversed bits. */
  readonly #order: Uint16Array;

  /**
   * @param size samples in a frame, a power of four from 16 to 16384
   * @param window weight of each place in the frame, 0 at its first sample, 1 after its last
   */
  constructor(size: number, window: (place: number) => number = hann) {
    this.size = size;
    const half = size / 2;
    this.#window = Float64Array.from({ length: size }, (_, n) => window(n / size) / size);
    this.#cos = Float64Array.from({ length: half }, (_, k) => Math.cos((2 * Math.PI * k) / size));
    this.#sin = Float64Array.from({ length: half }, (_, k) => Math.sin((2 * Math.PI * k) / size));
    const bits = Math.log2(half);
    this.#order = Uint16Array.from({ length: half / 4 }, (_, i) => {
      let reversed = 0;
      for (let bit = 2; bit < bits; bit += 1) if ((4 * i) & (1 << bit)) reversed |= 1 << (bits - 1 - bit);
      return reversed;
    });
  }

  /** Writes the power of the frame of `samples` that starts at `start` into `power` (size/2 + 1 bins). */
  compute(samples: Float32Array, start: number, power: Float64Array): void {
    this.#firstStages(samples, start);
    const turns = { cos: this.#cos, sin: this.#sin };
    for (let span = 4; span < this.size / 4; span *= 4)
      joinFours(VALUES, this.size / 2, span, turns, this.size / (4 * span));
    this.#lastStage(power);
  }

  /** Windows the frame and transforms it four values at a time. */
  #firstStages(samples: Float32Array, start: number): void {
    const window = this.#window;
    const order = this.#order;
    const quarter = this.size / 4;
    for (let i = 0; i < order.length; i += 1) {
      const a = 2 * order[i]!;
      const c = a + quarter;
      const b = c + quarter;
      const d = b + quarter;
      const ar = samples[start + a]! * window[a]!;
      const ai = samples[start + a + 1]! * window[a + 1]!;
      const br = samples[start + b]! * window[b]!;
      const bi = samples[start + b + 1]! * window[b + 1]!;
      const cr = samples[start + c]! * window[c]!;
      const ci = samples[start + c + 1]! * window[c + 1]!;
      const dr = samples[start + d]! * window[d]!;
      const di = samples[start + d + 1]! * window[d + 1]!;
      const to = 4 * i;
      re[to] = ar + br + (cr + dr);
      im[to] = ai + bi + (ci + di);
      re[to + 1] = ar - br + (ci - di);
      im[to + 1] = ai - bi - (cr - dr);
      re[to + 2] = ar + br - (cr + dr);
      im[to + 2] = ai + bi - (ci + di);
      re[to + 3] = ar - br - (ci - di);
      im[to + 3] = ai - bi + (cr - dr);
    }
  }

  /**
   * Joins the two halves and splits what is left into even and odd samples, bin k together with half − k, quarter ± k.
   */
  #lastStage(power: Float64Array): void {
    const half = this.size / 2;
    const quarter = half / 2;
    const eighth = quarter / 2;
    const cos = this.#cos;
    const sin = this.#sin;
    for (let k = 1; k <= eighth; k += 1) {
      const m = quarter - k;
      // The values at k and quarter + k, m and quarter + m; the factor at m is that at k, mirrored.
      const c1 = cos[2 * k]!;
      const s1 = sin[2 * k]!;
      const br = re[quarter + k]! * c1 + im[quarter + k]! * s1;
      const bi = im[quarter + k]! * c1 - re[quarter + k]! * s1;
      const dr = im[quarter + m]! * s1 - re[quarter + m]! * c1;
      const di = -im[quarter + m]! * c1 - re[quarter + m]! * s1;
      const kr = re[k]! + br;
      const ki = im[k]! + bi;
      const qkr = re[k]! - br;
      const qki = im[k]! - bi;
      const mr = re[m]! + dr;
      const mi = im[m]! + di;
      const qmr = re[m]! - dr;
      const qmi = im[m]! - di;
      const c = cos[k]!;
      const s = sin[k]!;
      // k with half − k = quarter + m.
      let oddRe = ki + qmi;
      let oddIm = qmr - kr;
      let turnedRe = oddRe * c + oddIm * s;
      let turnedIm = oddIm * c - oddRe * s;
      let evenRe = kr + qmr;
      let evenIm = ki - qmi;
      power[k] = (evenRe + turnedRe) ** 2 + (evenIm + turnedIm) ** 2;
      power[half - k] = (evenRe - turnedRe) ** 2 + (evenIm - turnedIm) ** 2;
      // m with half − m = quarter + k; the factor is that at k with cosine and sine exchanged.
      oddRe = mi + qki;
      oddIm = qkr - mr;
      turnedRe = oddRe * s + oddIm * c;
      turnedIm = oddIm * s - oddRe * c;
      evenRe = mr + qkr;
      evenIm = mi - qki;
      power[m] = (evenRe + turnedRe) ** 2 + (evenIm + turnedIm) ** 2;
      power[half - m] = (evenRe - turnedRe) ** 2 + (evenIm - turnedIm) ** 2;
    }
    const even = re[0]! + re[quarter]!;
    const odd = im[0]! + im[quarter]!;
    power[0] = 4 * (even + odd) ** 2;
    power[half] = 4 * (even - odd) ** 2;
    power[quarter] = 4 * ((re[0]! - re[quarter]!) ** 2 + (im[0]! - im[quarter]!) ** 2);
  }
}
