/**
 * The discrete Fourier transform of complex numbers, forwards and back, in place.
 *
 * Conventions: X(k) = Σ x(n)·e^(−2πi·kn/N); back is the same with +, divided by N. Sizes are powers of two.
 * Source: J. W. Cooley and J. W. Tukey, Math. Comput. 19(90), 1965, of radix 2.
 */

/** Transforms of one size. */
export class ComplexFft {
  /** How many numbers are transformed. */
  readonly size: number;
  readonly #cos: Float64Array;
  readonly #sin: Float64Array;
  readonly #order: Uint32Array;

  /** @param size numbers in a transform, a power of two from 2 */
  constructor(size: number) {
    this.size = size;
    this.#cos = Float64Array.from({ length: size / 2 }, (_, k) => Math.cos((2 * Math.PI * k) / size));
    this.#sin = Float64Array.from({ length: size / 2 }, (_, k) => Math.sin((2 * Math.PI * k) / size));
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
    for (let span = 1; span < this.size; span *= 2) this.#stage(re, im, span);
  }

  #stage(re: Float64Array, im: Float64Array, span: number): void {
    const stride = this.size / (2 * span);
    for (let k = 0; k < span; k += 1) {
      const c = this.#cos[k * stride]!;
      const s = this.#sin[k * stride]!;
      for (let i = k; i < this.size; i += 2 * span) {
        const j = i + span;
        const a = re[j]! * c + im[j]! * s;
        const b = im[j]! * c - re[j]! * s;
        re[j] = re[i]! - a;
        im[j] = im[i]! - b;
        re[i] = re[i]! + a;
        im[i] = im[i]! + b;
      }
    }
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
