import { expect, it } from 'vitest';
import { dbToGain, dbToPower, gainToDb, powerToDb } from './decibels.ts';

it('[SI7] twenty decibels are ten times the amplitude and a hundred times the power', () => {
  // definition: 20·log10 of a ratio of amplitudes, 10·log10 of one of powers
  expect(dbToGain(20)).toBe(10);
  expect(dbToPower(20)).toBe(100);
  expect(gainToDb(0.1)).toBeCloseTo(-20, 12);
  expect(powerToDb(0.1)).toBeCloseTo(-10, 12);
  // definition: half of the amplitude is −6.02 dB, half of the power −3.01 dB
  expect(gainToDb(0.5)).toBeCloseTo(-6.0206, 4);
  expect(powerToDb(0.5)).toBeCloseTo(-3.0103, 4);
  expect(gainToDb(0)).toBe(Number.NEGATIVE_INFINITY);
  expect(powerToDb(0)).toBe(Number.NEGATIVE_INFINITY);
});

it('[SI7] both ways undo each other', () => {
  for (const db of [-120, -18.5, 0, 7.25]) {
    expect(gainToDb(dbToGain(db))).toBeCloseTo(db, 10);
    expect(powerToDb(dbToPower(db))).toBeCloseTo(db, 10);
  }
});
