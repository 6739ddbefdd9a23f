import { expect, it } from 'vitest';
import { kWeight } from './k-weighting.ts';

it('[LI50] frequencies weigh as loudness is defined', () => {
  // ITU-R BS.1770-4 Annex 1: gain of the two filters at 48 kHz, in dB, as the coefficients of its tables give it
  const gains = [
    [25, -10.393],
    [40, -5.567],
    [60, -2.899],
    [100, -1.134],
    [200, -0.265],
    [500, 0.043],
    [997, 0.691],
    [2000, 3.071],
    [5000, 4.013],
    [10_000, 4.042],
  ] as const;
  for (const [hz, db] of gains)
    expect(Math.abs(10 * Math.log10(kWeight(hz)) - db), `${hz} Hz`).toBeLessThan(0.1);
});
