import { expect, it } from 'vitest';
import { blackman, hann, kaiser, sinc } from './windows.ts';

it('[SI3] Hann and Blackman are 0 at their ends and 1 in the middle', () => {
  for (const window of [hann, blackman]) {
    expect(window(0)).toBeCloseTo(0, 15);
    expect(window(0.5)).toBeCloseTo(1, 15);
    expect(window(0.2)).toBeCloseTo(window(0.8), 15);
  }
  // definition: sin²(πx) at a quarter is 1/2; 0.42 − 0.5·cos(π/2) + 0.08·cos(π) = 0.34
  expect(hann(0.25)).toBeCloseTo(0.5, 15);
  expect(blackman(0.25)).toBeCloseTo(0.34, 15);
});

it('[SI3] Kaiser is one over the Bessel function at its ends', () => {
  // published: M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, table 9.11: e^−6·I0(6) = 0.16665 74327
  const atSix = 0.166_657_432_7 * Math.exp(6);
  expect(kaiser(0, 6)).toBeCloseTo(1 / atSix, 8);
  expect(kaiser(1, 6)).toBeCloseTo(1 / atSix, 8);
  expect(kaiser(0.5, 6)).toBe(1);
  // definition: with β = 0 it is a rectangle
  expect(kaiser(0.3, 0)).toBe(1);
});

it('[SI3] the sinc is 1 at nought, 0 at other whole numbers and 2/π half way to the first', () => {
  expect(sinc(0)).toBe(1);
  for (const n of [-2, -1, 1, 3]) expect(sinc(n)).toBeCloseTo(0, 15);
  // definition: sin(π/2)/(π/2)
  expect(sinc(0.5)).toBeCloseTo(2 / Math.PI, 15);
});
