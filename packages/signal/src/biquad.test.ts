import { expect, it } from 'vitest';
import { scattered } from '../test/scattered.ts';
import {
  type Biquad,
  bandPass,
  filterInPlace,
  highPass,
  lowPass,
  powerResponse,
  RunningFilter,
} from './biquad.ts';
import { powerToDb } from './decibels.ts';
import { meanSquare } from './level.ts';

const RATE = 48_000;

/** Level of a steady sine after a filter, in dB of the level before. */
function measuredDb(by: Biquad, hz: number): number {
  const sine = Float64Array.from({ length: 2 * RATE }, (_, n) => Math.sin((2 * Math.PI * hz * n) / RATE));
  filterInPlace(sine, by);
  return powerToDb(2 * meanSquare(sine.subarray(RATE)));
}

it('[SI4] Butterworth filters let half of the power pass at the corner and fall by 12 dB an octave beyond', () => {
  // definition: the power of a Butterworth filter of second order is 1/(1 + (f/fc)⁴), a high-pass its mirror image
  for (const [by, far] of [
    [lowPass(1000, Math.SQRT1_2, RATE), 4000],
    [highPass(1000, Math.SQRT1_2, RATE), 250],
  ] as const) {
    expect(measuredDb(by, 1000)).toBeCloseTo(-3.0103, 3);
    expect(Math.abs(measuredDb(by, far) + powerToDb(1 + 4 ** 4))).toBeLessThan(0.5);
    expect(Math.abs(measuredDb(by, 1_000_000 / far))).toBeLessThan(0.05);
  }
});

it('[SI4] a band-pass has a gain of 1 at its centre and half of the power at the edges of its band', () => {
  const by = bandPass(1000, 2, RATE);
  expect(measuredDb(by, 1000)).toBeCloseTo(0, 6);
  // definition: the band's edges f1 and f2 have f1·f2 = fc² and f2 − f1 = fc/Q: 780.8 and 1280.8 Hz; the bilinear
  // transform moves them by less than 5 Hz here
  for (const hz of [780.8, 1280.8]) expect(Math.abs(measuredDb(by, hz) + 3.0103)).toBeLessThan(0.05);
});

it('[SI4] the response that is computed is the one that is measured', () => {
  for (const by of [lowPass(300, 2, RATE), highPass(5000, 0.6, RATE), bandPass(2000, 1, RATE)]) {
    for (const hz of [100, 1000, 4000, 15_000])
      expect(powerToDb(powerResponse(by, hz, RATE))).toBeCloseTo(measuredDb(by, hz), 3);
  }
});

it('[SI4] a filter that runs gives the same however its input is cut', () => {
  const by = highPass(200, 0.7, RATE);
  const [whole, cut] = [scattered(1000), scattered(1000)];
  filterInPlace(whole, by);
  const filter = new RunningFilter(by);
  for (const [from, to] of [
    [0, 1],
    [1, 333],
    [333, 1000],
  ] as const)
    filter.run(cut, from, to);
  expect(cut).toEqual(whole);
});
