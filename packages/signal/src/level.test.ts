import { expect, it } from 'vitest';
import { energyOf, meanSquare, peakOf, rootMeanSquare } from './level.ts';

it('[SI9] a sine over whole periods has half of its peak squared as mean power', () => {
  const sine = Float64Array.from({ length: 4800 }, (_, n) => 0.8 * Math.sin((2 * Math.PI * n) / 48));
  // definition: the mean of sin² over a period is 1/2
  expect(peakOf(sine)).toBeCloseTo(0.8, 12);
  expect(meanSquare(sine)).toBeCloseTo(0.32, 12);
  expect(rootMeanSquare(sine)).toBeCloseTo(0.8 * Math.SQRT1_2, 12);
  expect(energyOf(sine)).toBeCloseTo(0.32 * 4800, 8);
});

it('[SI9] a peak below zero counts as high, and nothing has no level', () => {
  expect(peakOf([0.1, -0.5, 0.2])).toBe(0.5);
  expect([peakOf([]), energyOf([]), meanSquare([]), rootMeanSquare([])]).toEqual([0, 0, 0, 0]);
});
