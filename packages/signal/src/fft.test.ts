import { expect, it } from 'vitest';
import { scattered } from '../test/scattered.ts';
import { PowerSpectrum } from './fft.ts';

/** Rounding of sums of a thousand products of numbers under one. */
const ROUNDING = 1e-14;

/** |Σ w(n)·x(n)·e^(−2πi·kn/N)|²·4/N², sum by sum. */
function plain(samples: Float32Array, start: number, size: number, bin: number, window: number[]): number {
  let [re, im] = [0, 0];
  for (let n = 0; n < size; n += 1) {
    const weighted = (samples[start + n] as number) * (window[n] as number);
    re += weighted * Math.cos((2 * Math.PI * bin * n) / size);
    im -= weighted * Math.sin((2 * Math.PI * bin * n) / size);
  }
  return (4 * (re * re + im * im)) / size ** 2;
}

it.each([16, 64, 256, 1024])('[SI1] are those of the discrete Fourier transform of %i samples', (size) => {
  const samples = scattered(size + 3);
  const power = new Float64Array(size / 2 + 1);
  new PowerSpectrum(size).compute(samples, 3, power);
  // definition: the periodic Hann window
  const window = Array.from({ length: size }, (_, n) => 0.5 - 0.5 * Math.cos((2 * Math.PI * n) / size));
  const off = [...power].map((found, bin) => Math.abs(found - plain(samples, 3, size, bin, window)));
  expect(off.length).toBe(size / 2 + 1);
  expect(Math.max(...off)).toBeLessThan(ROUNDING);
});

it('[SI1] a frame can be weighted otherwise', () => {
  const samples = scattered(64);
  const power = new Float64Array(33);
  new PowerSpectrum(64, (place) => 1 - place).compute(samples, 0, power);
  const window = Array.from({ length: 64 }, (_, n) => 1 - n / 64);
  for (let bin = 0; bin <= 32; bin += 1)
    expect(Math.abs((power[bin] as number) - plain(samples, 0, 64, bin, window))).toBeLessThan(ROUNDING);
});

it.each([4096, 16_384])('[SI1] a full-scale sine at the centre of a bin of %i has the power 1/4', (size) => {
  const power = new Float64Array(size / 2 + 1);
  const sine = Float32Array.from({ length: size }, (_, n) => Math.sin((2 * Math.PI * 100 * n) / size));
  new PowerSpectrum(size).compute(sine, 0, power);
  // definition: Σ w(n)·sin²(…) = N/4 under the Hann window, so its power is 4/N²·(N/4)²; samples have 24 bits
  expect(power[100]).toBeCloseTo(0.25, 7);
});
