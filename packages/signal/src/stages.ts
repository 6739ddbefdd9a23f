/** Stages of a fast Fourier transform, as the transforms here share them. */

/** Cosines and sines of a circle in equal parts. */
export interface Turns {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

/** Numbers that are joined before the next ones are, so that what is at hand stays near: twice 32 kB. */
const NEAR = 4096;

/**
 * Joins transforms of `span` complex numbers, in order of reversed bits, to transforms of four times as many: two stages of
 * radix 2 taken together.
 * @param count how many numbers there are
 * @param stride parts of the circle to a part of the longer transforms
 */
export function joinFours(
  [re, im]: readonly [Float64Array, Float64Array],
  count: number,
  span: number,
  { cos, sin }: Turns,
  stride: number,
): void {
  const block = Math.max(4 * span, Math.min(count, NEAR));
  for (let from = 0; from < count; from += block) {
    for (let k = 0; k < span; k += 1) {
      const c1 = cos[2 * k * stride]!;
      const s1 = sin[2 * k * stride]!;
      const c2 = cos[k * stride]!;
      const s2 = sin[k * stride]!;
      for (let i0 = from + k; i0 < from + block; i0 += 4 * span) {
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
}
