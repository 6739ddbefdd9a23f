import { expect, it } from 'vitest';
import { ComplexFft } from './complex-fft.ts';

/** Rounding of some hundred additions of numbers of about 1. */
const ROUNDING = 1e-10;

/** The largest difference. */
function farthest(values: Float64Array, wanted: Float64Array): number {
  return values.reduce((most, value, i) => Math.max(most, Math.abs(value - wanted[i]!)), 0);
}

it.each([2, 4, 8, 16, 32, 256, 512])(
  '[SI14] transforms %i complex numbers by the definition, and back',
  (size) => {
    const re = Float64Array.from({ length: size }, (_, n) => Math.sin(n * n));
    const im = Float64Array.from({ length: size }, (_, n) => Math.cos(3 * n));
    const [wantRe, wantIm] = [new Float64Array(size), new Float64Array(size)];
    for (let k = 0; k < size; k += 1) {
      for (let n = 0; n < size; n += 1) {
        // definition: X(k) = Σ x(n)·e^(−2πi·kn/N)
        const [c, s] = [Math.cos((2 * Math.PI * k * n) / size), Math.sin((2 * Math.PI * k * n) / size)];
        wantRe[k] = wantRe[k]! + re[n]! * c + im[n]! * s;
        wantIm[k] = wantIm[k]! + im[n]! * c - re[n]! * s;
      }
    }
    const fft = new ComplexFft(size);
    const [a, b] = [re.slice(), im.slice()];
    fft.forward(a, b);
    expect(farthest(a, wantRe)).toBeLessThan(ROUNDING);
    expect(farthest(b, wantIm)).toBeLessThan(ROUNDING);
    fft.back(a, b);
    expect(farthest(a, re)).toBeLessThan(ROUNDING);
    expect(farthest(b, im)).toBeLessThan(ROUNDING);
  },
);
