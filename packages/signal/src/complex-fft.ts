/**
 * The discrete Fourier transform of complex numbers, forwards and back, in place.
 *
 * Conventions: X(k) = Σ x(n)·e^(−2πi·kn/N); back is the same with +, divided by N. Sizes are powers of two.
 * Source: J. W. Cooley and J. W. Tukey, Math. Comput. 19(90), 1965, of radix 2, two stages taken together.
 */

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
    const isOdd = Math.log2(this.size) % 2 === 1;
    if (isOdd) joinPairs(re, im, this.size);
    for (let span = isOdd ? 2 : 1; span < this.size; span *= 4) this.#twoStages(re, im, span);
  }

  /** Joins transforms of `span` numbers to transforms of four times as many. */
  #twoStages(re: Float64Array, im: Float64Array, span: number): void {
    const { size } = this;
    const [cos, sin] = [this.#cos, this.#sin];
    const stride = size / (4 * span);
    for (let k = 0; k < span; k += 1) {
      const c1 = cos[2 * k * stride]!;
      const s1 = sin[2 * k * stride]!;
      const c2 = cos[k * stride]!;
      const s2 = sin[k * stride]!;
      for (let i0 = k; i0 < size; i0 += 4 * span) {
        const i1 = i0 + span;
        const i2 = i1 + span;
        const i3 = i2 + span;
        const br = re[i1]! * c1 + im[i1]! * s1;
        const bi = im[i1]! * c1 - re[i1]! * s1;
        const dr = re[i3]! * c1 + im[i3]! * s1;
        const di = im[i3]! * c1 - re[i3]! * s1;
        const er = re[i2]! + dr;
        const ei = im[i2]! + di;
        const fr = re[i2]! - dr;
        const fi = im[i2]! - di;
        const gr = er * c2 + ei * s2;
        const gi = ei * c2 - er * s2;
        // A quarter turn further: the second stage's factor times −i.
        const hr = fi * c2 - fr * s2;
        const hi = -fr * c2 - fi * s2;
        const ar = re[i0]!;
        const ai = im[i0]!;
        re[i0] = ar + br + gr;
        im[i0] = ai + bi + gi;
        re[i2] = ar + br - gr;
        im[i2] = ai + bi - gi;
        re[i1] = ar - br + hr;
        im[i1] = ai - bi + hi;
        re[i3] = ar - br - hr;
        im[i3] = ai - bi - hi;
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
