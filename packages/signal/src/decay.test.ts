import { expect, it } from 'vitest';
import { easePerSample, fallPerSample, leftAfter } from './decay.ts';
import { gainToDb } from './decibels.ts';

it('[SI8] what falls by 60 dB in its time has fallen by 30 dB in half of it', () => {
  // definition: T60 is the time of a fall by 60 dB, and the fall is as many decibels in every second
  expect(gainToDb(fallPerSample(0.5, 48_000) ** 24_000)).toBeCloseTo(-60, 8);
  expect(gainToDb(fallPerSample(0.5, 48_000) ** 12_000)).toBeCloseTo(-30, 8);
  expect(gainToDb(leftAfter(0.25, 0.5))).toBeCloseTo(-30, 12);
  expect(leftAfter(0, 0.5)).toBe(1);
});

it('[SI8] what settles has 1/e left after its time constant', () => {
  // definition: e^(−t/τ) at t = τ
  expect(easePerSample(0.01, 44_100) ** 441).toBeCloseTo(1 / Math.E, 12);
});
