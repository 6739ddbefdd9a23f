/**
 * Power spectra of real frames.
 *
 * Conventions: frames of a power of two of samples, periodic Hann window, power scaled so that a full-scale sine at a
 * bin's centre has power 1/4 (for any frame size); bins 0 to size/2.
 * Source: radix-2 Cooley–Tukey on half the length, with the usual split of a packed real transform.
 */
export class PowerSpectrum {
  readonly size: number;
  readonly #half: number;
  readonly #window: Float64Array;
  readonly #cos: Float64Array;
  readonly #sin: Float64Array;
  readonly #reversed: Uint16Array;
  readonly #re: Float64Array;
  readonly #im: Float64Array;

  /** @param size samples in a frame, a power of two from 16 to 65536. */
  constructor(size: number) {
    this.size = size;
    const half = size / 2;
    this.#half = half;
    this.#window = Float64Array.from(
      { length: size },
      (_, n) => 0.5 - 0.5 * Math.cos((2 * Math.PI * n) / size),
    );
    this.#cos = Float64Array.from({ length: half }, (_, k) => Math.cos((2 * Math.PI * k) / size));
    this.#sin = Float64Array.from({ length: half }, (_, k) => Math.sin((2 * Math.PI * k) / size));
    this.#reversed = new Uint16Array(half);
    const bits = Math.log2(half);
    for (let i = 0; i < half; i += 1) {
      let reversed = 0;
      for (let bit = 0; bit < bits; bit += 1) if (i & (1 << bit)) reversed |= 1 << (bits - 1 - bit);
      this.#reversed[i] = reversed;
    }
    this.#re = new Float64Array(half);
    this.#im = new Float64Array(half);
  }

  /** Writes the power of the frame of `samples` that starts at `start` into `power` (size/2 + 1 bins). */
  compute(samples: Float32Array, start: number, power: Float64Array): void {
    const half = this.#half;
    const window = this.#window;
    const re = this.#re;
    const im = this.#im;
    const reversed = this.#reversed;
    for (let i = 0; i < half; i += 1) {
      const to = reversed[i]!;
      const n = 2 * i;
      re[to] = samples[start + n]! * window[n]!;
      im[to] = samples[start + n + 1]! * window[n + 1]!;
    }
    this.#butterflies();
    this.#split(power);
  }

  #butterflies(): void {
    const n = this.#half;
    let span = 1;
    for (; 4 * span <= n; span *= 4) this.#twoStages(span);
    if (span < n) this.#stage(span);
  }

  /** Joins transforms of `span` values to transforms of twice as many. */
  #stage(span: number): void {
    const re = this.#re;
    const im = this.#im;
    const stride = this.size / (2 * span);
    for (let k = 0; k < span; k += 1) {
      const c = this.#cos[k * stride]!;
      const s = this.#sin[k * stride]!;
      for (let i = k; i < this.#half; i += 2 * span) {
        const j = i + span;
        const xr = re[j]! * c + im[j]! * s;
        const xi = im[j]! * c - re[j]! * s;
        re[j] = re[i]! - xr;
        im[j] = im[i]! - xi;
        re[i] = re[i]! + xr;
        im[i] = im[i]! + xi;
      }
    }
  }

  /** Two stages in one pass over the values: half the reading and writing. */
  #twoStages(span: number): void {
    const re = this.#re;
    const im = this.#im;
    const stride = this.size / (4 * span);
    for (let k = 0; k < span; k += 1) {
      const c1 = this.#cos[2 * k * stride]!;
      const s1 = this.#sin[2 * k * stride]!;
      const c2 = this.#cos[k * stride]!;
      const s2 = this.#sin[k * stride]!;
      for (let i0 = k; i0 < this.#half; i0 += 4 * span) {
        const i1 = i0 + span;
        const i2 = i1 + span;
        const i3 = i2 + span;
        const br = re[i1]! * c1 + im[i1]! * s1;
        const bi = im[i1]! * c1 - re[i1]! * s1;
        const dr = re[i3]! * c1 + im[i3]! * s1;
        const di = im[i3]! * c1 - re[i3]! * s1;
        const ar = re[i0]!;
        const ai = im[i0]!;
        const cr = re[i2]!;
        const ci = im[i2]!;
        const er = cr + dr;
        const ei = ci + di;
        const fr = cr - dr;
        const fi = ci - di;
        const gr = er * c2 + ei * s2;
        const gi = ei * c2 - er * s2;
        // A quarter turn further: the second stage's factor times −i.
        const hr = fi * c2 - fr * s2;
        const hi = -fr * c2 - fi * s2;
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

  #split(power: Float64Array): void {
    const n = this.#half;
    const re = this.#re;
    const im = this.#im;
    const scale = 4 / (this.size * this.size);
    const dc = re[0]! + im[0]!;
    const top = re[0]! - im[0]!;
    power[0] = dc * dc * scale;
    power[n] = top * top * scale;
    for (let k = 1; k < n; k += 1) {
      const m = n - k;
      const evenRe = 0.5 * (re[k]! + re[m]!);
      const evenIm = 0.5 * (im[k]! - im[m]!);
      const oddRe = 0.5 * (im[k]! + im[m]!);
      const oddIm = 0.5 * (re[m]! - re[k]!);
      const c = this.#cos[k]!;
      const s = this.#sin[k]!;
      const xr = evenRe + oddRe * c + oddIm * s;
      const xi = evenIm + oddIm * c - oddRe * s;
      power[k] = (xr * xr + xi * xi) * scale;
    }
  }
}
