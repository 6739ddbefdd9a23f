import { expect, it } from 'vitest';
import { filterInPlace } from './biquad.ts';
import { powerToDb } from './decibels.ts';
import { createKFilter, kWeight, kWeighted, kWeighting, lufsToPower, powerToLufs } from './k-weighting.ts';
import { meanSquare } from './level.ts';

function sine(hz: number, rate: number, seconds: number): Float32Array {
  return Float32Array.from({ length: seconds * rate }, (_, n) => Math.sin((2 * Math.PI * hz * n) / rate));
}

it('[SI5] has the coefficients of the standard at 48 kHz', () => {
  const [shelf, highPass] = kWeighting(48000);
  // standard: ITU-R BS.1770-4 Annex 1, table 1
  const first = [1.53512485958697, -2.69169618940638, 1.19839281085285, -1.69065929318241, 0.73248077421585];
  [shelf.b0, shelf.b1, shelf.b2, shelf.a1, shelf.a2].forEach((value, i) => {
    expect(value).toBeCloseTo(first[i] as number, 10);
  });
  // standard: ITU-R BS.1770-4 Annex 1, table 2
  const second = [1, -2, 1, -1.99004745483398, 0.99007225036621];
  [highPass.b0, highPass.b1, highPass.b2, highPass.a1, highPass.a2].forEach((value, i) => {
    expect(value).toBeCloseTo(second[i] as number, 10);
  });
});

it('[SI5] is derived for other rates as libebur128 does', () => {
  const [shelf, highPass] = kWeighting(44100);
  // library: formulae of libebur128 commit 67b33abe, ebur128.c, evaluated at 44.1 kHz
  expect(shelf.b0).toBeCloseTo(1.5308412300503478, 10);
  expect(shelf.b2).toBeCloseTo(1.1690790799215869, 10);
  expect(highPass.a1).toBeCloseTo(-1.989169673629796, 10);
});

it('[SI5] makes a sine of 997 Hz at full scale −3.01 LUFS, at any rate', () => {
  for (const rate of [44_100, 48_000, 96_000]) {
    const weighted = kWeighted(sine(997, rate, 2), rate).subarray(rate);
    // standard: ITU-R BS.1770-4 Annex 1: 0 dB FS, 997 Hz, one front channel: −3.01 LKFS; the derived filters of other
    // rates stay within 0.03 dB, see the module's head
    expect(Math.abs(powerToLufs(meanSquare(weighted)) + 3.01)).toBeLessThan(0.03);
  }
  expect(powerToLufs(lufsToPower(-23))).toBeCloseTo(-23, 12);
});

it('[SI5] both filters in one pass are the two, one after the other, however the input is cut', () => {
  const samples = sine(200, 44_100, 0.1);
  const slow = Float64Array.from(samples);
  for (const filter of kWeighting(44_100)) filterInPlace(slow, filter);
  const filter = createKFilter(44_100);
  const out = new Float64Array(samples.length);
  filter(samples, 0, 1000, out);
  filter(samples, 1000, samples.length, out.subarray(1000));
  // rounding: sums of products of numbers under 3
  const off = Math.max(...out.map((value, i) => Math.abs(value - (slow[i] as number))));
  expect(out.length).toBe(4410);
  expect(off).toBeLessThan(1e-12);
});

it('[SI6] frequencies weigh as loudness is defined', () => {
  // standard: ITU-R BS.1770-4 Annex 1: gain of the two filters of its tables at 48 kHz, in dB, as their coefficients
  // give it
  const gains = [
    [25, -10.393],
    [40, -5.567],
    [60, -2.899],
    [100, -1.133],
    [200, -0.265],
    [500, 0.042],
    [997, 0.691],
    [2000, 3.071],
    [5000, 4.013],
    [10_000, 4.042],
  ] as const;
  for (const [hz, db] of gains) expect(Math.abs(powerToDb(kWeight(hz)) - db), `${hz} Hz`).toBeLessThan(0.001);
});
