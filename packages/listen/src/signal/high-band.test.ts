import { expect, it } from 'vitest';
import { HighBand } from './high-band.ts';

function heard(hz: number, rate: number, seconds = 1): number {
  const band = new HighBand(rate);
  const tone = Float32Array.from({ length: seconds * rate }, (_, n) =>
    Math.sin((2 * Math.PI * hz * n) / rate),
  );
  for (let at = 0; at < tone.length; at += 1000) band.push(tone.subarray(at, at + 1000));
  return band.between(100, 300);
}

it('[LI51] what lies above the analysed band is measured, and nothing below it', () => {
  // definition: the mean square of a full-scale sine is 1/2; a fourth-order Butterworth filter takes 24 dB an octave
  for (const rate of [44_100, 48_000, 96_000]) {
    expect(Math.abs(heard(16_000, rate) - 0.5)).toBeLessThan(0.05);
    expect(heard(2_756, rate)).toBeLessThan(0.5 * 10 ** -4.5);
  }
  // definition: half of the power passes at the corner
  expect(Math.abs(heard(11_025, 48_000) - 0.25)).toBeLessThan(0.005);
});

it('[LI51] a recording that ends there holds nothing above, and what is forgotten or still to come is silence', () => {
  expect(heard(5000, 22_050)).toBe(0);
  const band = new HighBand(44_100);
  band.push(new Float32Array(44_100).fill(0.1));
  expect(band.between(400, 500)).toBe(0);
});
