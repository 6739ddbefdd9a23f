/**
 * Sums of products of a known sound and a take, and the delay that they tell.
 *
 * Conventions: mono samples of one rate; the take is later than what is known by 0 or more.
 * Source: the generalised cross-correlation with phase transform (C. H. Knapp and G. C. Carter, IEEE Trans. ASSP 24(4),
 * 1976).
 */
import { type ComplexFft, rootMeanSquare } from '@shedbook/signal';

const TINY = 1e-20;

/** A sum over stretches of sound, as a spectrum. */
export interface Products {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Adds a stretch: the known sound, half a transform long, and the take from there on, a whole one. */
export function addProducts(fft: ComplexFft, known: Float32Array, take: Float32Array, to: Products): void {
  const { size } = fft;
  // Both real sounds go through one transform: the known one as the real part, the take as the imaginary one.
  const [re, im] = [new Float64Array(size), new Float64Array(size)];
  re.set(known);
  im.set(take);
  fft.forward(re, im);
  for (let k = 0; k < size; k += 1) {
    const m = (size - k) % size;
    const [xr, xi] = [(re[k]! + re[m]!) / 2, (im[k]! - im[m]!) / 2];
    const [yr, yi] = [(im[k]! + im[m]!) / 2, (re[m]! - re[k]!) / 2];
    to.re[k] = to.re[k]! + xr * yr + xi * yi;
    to.im[k] = to.im[k]! + xr * yi - xi * yr;
  }
}

/** Leaves of each bin its phase alone. */
export function whiten({ re, im }: Products): void {
  for (let k = 0; k < re.length; k += 1) {
    const length = Math.sqrt(re[k]! ** 2 + im[k]! ** 2) + TINY;
    re[k] = re[k]! / length;
    im[k] = im[k]! / length;
  }
}

/**
 * Where a correlation stands out, by its index; null where it does nowhere.
 * @param times how many times its root mean square it must be there; chance alone gives 4 to 5
 */
export function findPeak(correlation: Float64Array, times: number): number | null {
  const best = correlation.reduce((most, value, i) => (value > correlation[most]! ? i : most), 0);
  const chance = rootMeanSquare(correlation);
  return chance === 0 || correlation[best]! < times * chance ? null : best;
}
