import { describe, expect, it } from 'vitest';
import { magnitudeAt } from '../../test/signals.ts';
import { RATE, strike } from '../../test/sounds.ts';
import { TOM_HEADS } from '../kit/toms.ts';
import { besselJ, membraneModes, strikeWeight } from './membrane.ts';

/** Zeros of Bessel functions, to four places. */
const ZEROS = [
  // published: Rossing and Fletcher, table of zeros j_mn; order of modes as printed by Morrison and Rossing 2018
  [0, 1, 2.4048],
  [1, 1, 3.8317],
  [2, 1, 5.1356],
  [0, 2, 5.5201],
  [3, 1, 6.3802],
  [1, 2, 7.0156],
  [4, 1, 7.5883],
  [2, 2, 8.4172],
  [0, 3, 8.6537],
  [5, 1, 8.7715],
  [3, 2, 9.761],
  [6, 1, 9.9361],
] as const;

const TOMS = ['tom-high', 'tom-mid', 'tom-low'] as const;

describe('a membrane', () => {
  it('[SO40] has the modes of the Bessel functions, in order', () => {
    const modes = membraneModes();
    ZEROS.forEach(([m, n, zero], i) => {
      expect([modes[i]?.m, modes[i]?.n]).toEqual([m, n]);
      expect(modes[i]?.zero).toBeCloseTo(zero, 4);
      expect(modes[i]?.ratio).toBeCloseTo(zero / 2.40483, 4);
    });
  });

  it('[SO40] Bessel functions agree with published values', () => {
    // published: Abramowitz and Stegun, Handbook of Mathematical Functions, table 9.1: J0(1), J1(1), J0(10), J2(5)
    expect(besselJ(0, 1)).toBeCloseTo(0.7651976866, 9);
    expect(besselJ(1, 1)).toBeCloseTo(0.4400505857, 9);
    expect(besselJ(0, 10)).toBeCloseTo(-0.2459357645, 9);
    expect(besselJ(2, 5)).toBeCloseTo(0.0465651163, 9);
  });

  it('[SO41] struck in the middle sounds only modes without nodal diameters', () => {
    // definition: J_m(0) = 0 for m > 0
    const modes = membraneModes();
    expect(new Set(modes.map(({ m }) => m > 0))).toEqual(new Set([true, false]));
    for (const mode of modes) {
      const weight = Math.abs(strikeWeight(mode, 0));
      if (mode.m === 0) expect(weight).toBeCloseTo(1, 9);
      else expect(weight).toBeLessThan(1e-9);
    }
  });

  it.each(TOMS)('[SO42] %s rings at the Bessel ratios', (name) => {
    const head = TOM_HEADS[name];
    const settled = strike(name, -20, 'modes', 0.7).left.subarray(
      Math.round(0.1 * RATE),
      Math.round(0.6 * RATE),
    );
    for (const ratio of [1, 1.5933, 2.1355, 2.6531]) {
      // definition: mode (m, n) lies at j_mn / j_01 times the lowest; ±1.5 % for the bend of a soft stroke
      const expected = head.lowestHz * ratio;
      let [best, bestHz] = [0, 0];
      for (let hz = expected * 0.94; hz < expected * 1.06; hz += 0.5) {
        const magnitude = magnitudeAt(settled, hz, RATE);
        if (magnitude > best) [best, bestHz] = [magnitude, hz];
      }
      expect(Math.abs(bestHz / expected - 1)).toBeLessThan(0.015);
    }
  });
});
