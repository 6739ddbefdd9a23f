/**
 * The discrete Fourier transform of complex numbers, forwards and back, in place.
 *
 * Conventions: X(k) = Σ x(n)·e^(−2πi·kn/N); back is the same with +, divided by N. Sizes are powers of two.
 * Source: J. W. Cooley and J. W. Tukey, Math. Comput. 19(90), 1965, of radix 2, two stages taken together.
 */

import { joinFours, type Turns } from './stages.ts';

/** The first stage, of radix 2 and without a factor. */
function joinPairs(re: Float64Array, im: Float64Array, size: number): void {
  for (let i = 0; i < size; i += 2) {
    const [a, b] = [re[i + 1]!, im[i + 1]!];
    re[i + 1] = re[i]! - a;
    im[i + 1] = im[i]! - b;
    re[i] = re[i]! + a;
    im[i] = im[i]! + b;
  }
}

/** Transforms of one size. */
export class ComplexFft {
  /** How many numbers are transformed. */
  readonly size: number;
  readonly #turns: Turns;
  readonly #order: Uint32Array;

  /** @param size numbers in a transform, a power of two from 2 */
  constructor(size: number) {
    this.size = size;
    this.#turns = {
      cos: Float64Array.from({ length: size / 2 }, (_, k) => Math.cos((2 * Math.PI * k) / size)),
      sin: Float64Array.from({ length: size / 2 }, (_, k) => Math.sin((2 * Math.PI * k) / size)),
    };
    this.#order = new Uint32Array(size);
    for (let i = 1; i < size; i += 1) this.#order[i] = (this.#order[i >> 1]! >> 1) | (i & 1 ? size >> 1 : 0);
  }

  /** Transforms real and imaginary parts in place. */
  forward(re: Float64Array, im: Float64Array): void {
    for (let i = 0; i < this.size; i += 1) {
      const j = this.#order[i]!;
      if (j <= i) continue;
      const [a, b] = [re[i]!, im[i]!];
      re[i] = re[j]!;
      im[i] = im[j]!;
      re[j] = a;
      im[j] = b;
    }
    const isOdd = Math.log2(this.size) % 2 === 1;
    if (isOdd) joinPairs(re, im, this.size);
    for (let span = isOdd ? 2 : 1; span < this.size; span *= 4)
      joinFours([re, im], this.size, span, this.#turns, this.size / (4 * span));
  }

  /** Transforms back in place. */
  back(re: Float64Array, im: Float64Array): void {
    this.forward(im, re);
    for (let i = 0; i < this.size; i += 1) {
      re[i] = re[i]! / this.size;
      im[i] = im[i]! / this.size;
    }
  }
}
