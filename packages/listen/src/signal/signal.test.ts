import { seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { PowerSpectrum } from './fft.ts';
import { ANALYSIS_RATE, Resampler } from './resample.ts';

/** Rounding of sums of a thousand products of numbers under one. */
const ROUNDING = 1e-14;

describe('power spectra', () => {
  it.each([16, 64, 256, 1024])('[LI40] are those of the discrete Fourier transform of %i samples', (size) => {
    const random = seededRandom(size);
    const samples = Float32Array.from({ length: size + 3 }, () => random.next() - 0.5);
    const power = new Float64Array(size / 2 + 1);
    new PowerSpectrum(size).compute(samples, 3, power);
    for (let bin = 0; bin <= size / 2; bin += 1) {
      let [re, im] = [0, 0];
      for (let n = 0; n < size; n += 1) {
        const windowed = (samples[n + 3] as number) * (0.5 - 0.5 * Math.cos((2 * Math.PI * n) / size));
        re += windowed * Math.cos((2 * Math.PI * bin * n) / size);
        im -= windowed * Math.sin((2 * Math.PI * bin * n) / size);
      }
      // definition: |Σ w(n) x(n) exp(−2πi kn/N)|², times 4/N² so that a full-scale sine has 1/4
      expect(Math.abs((power[bin] as number) - (4 * (re * re + im * im)) / size ** 2)).toBeLessThan(ROUNDING);
    }
  });
});

describe('resampling', () => {
  it.each([8000, 22_050, 44_100, 48_000, 96_000])(
    '[LI41] keeps a tone of 1 kHz in level and time, and takes out what would fold, from %i Hz',
    (rate) => {
      const tone = (hz: number) =>
        Float32Array.from({ length: rate / 2 }, (_, n) => Math.sin((2 * Math.PI * hz * n) / rate));
      const out = new Resampler(rate).push(tone(1000));
      for (let m = 200; m < out.length - 200; m += 1) {
        // definition: the same sine at the new rate, not delayed; 1 % is the filter's ripple
        const wanted = Math.sin((2 * Math.PI * 1000 * m) / ANALYSIS_RATE);
        expect(Math.abs((out[m] as number) - wanted)).toBeLessThan(0.01);
      }
      if (rate < 44_100) return;
      const folded = new Resampler(rate).push(tone(15_000)).subarray(200);
      expect(Math.max(...folded.map(Math.abs))).toBeLessThan(0.002);
    },
  );
});
