import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { matchOnsets, scoreOnsets } from './onsets.ts';

function fixture(name: string): readonly number[] {
  const path = fileURLToPath(new URL(`../../../../internal/fixtures/onset/${name}.txt`, import.meta.url));
  return readFileSync(path, 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.startsWith('#'))
    .map(Number);
}

/** Fixture, onsets of reference and estimate, matches within 50 and 25 ms, precision, recall, F at 50 ms. */
const TABLE = [
  ['00', 22, 27, 13, 2, 0.481481, 0.590909, 0.530612],
  ['01', 58, 3, 1, 0, 0.333333, 0.017241, 0.032787],
  ['02', 55, 36, 8, 4, 0.222222, 0.145455, 0.175824],
  ['03', 15, 25, 10, 2, 0.4, 0.666667, 0.5],
  ['04', 1, 45, 0, 0, 0, 0, 0],
  ['05', 4, 5, 1, 0, 0.2, 0.25, 0.222222],
  ['06', 12, 10, 1, 1, 0.1, 0.083333, 0.090909],
  ['07', 11, 10, 10, 3, 1, 0.909091, 0.952381],
  ['08', 8, 11, 4, 2, 0.363636, 0.5, 0.421053],
  ['09', 66, 58, 3, 3, 0.051724, 0.045455, 0.048387],
] as const;

describe('onset matching', () => {
  it.each(TABLE)(
    '[LI1] [LI2] fixture %s',
    (name, references, estimates, at50, at25, precision, recall, f) => {
      const reference = fixture(`ref${name}`);
      const estimate = fixture(`est${name}`);
      expect([reference.length, estimate.length]).toEqual([references, estimates]);
      // library: mir_eval's onset fixtures and outputs, internal/fixtures/onset/SOURCE.md
      const score = scoreOnsets(reference, estimate, 0.05);
      expect(score.matches).toBe(at50);
      expect(score.precision).toBeCloseTo(precision, 6);
      expect(score.recall).toBeCloseTo(recall, 6);
      expect(score.f).toBeCloseTo(f, 6);
      expect(matchOnsets(reference, estimate, 0.025)).toHaveLength(at25);
    },
  );

  it('[LI1] matches as in the worked examples', () => {
    // library: mir_eval, tests/test_util.py, match_events (sorted here: our onsets are in order)
    expect(matchOnsets([1, 2, 3], [1.1, 1.9, 5, 6, 10], 0.5)).toEqual([
      [0, 0],
      [1, 1],
    ]);
    // library: madmom, tests/test_evaluation_onsets.py
    const detected = [0.99999999, 1.02999999, 1.45, 2.01, 2.02, 2.5, 3.025000001];
    const annotated = [1, 1.02, 1.5, 2.0, 2.03, 2.05, 2.5, 3];
    expect(scoreOnsets(annotated, detected, 0.025)).toMatchObject({
      matches: 5,
      precision: 5 / 7,
      recall: 5 / 8,
    });
    expect(scoreOnsets(annotated, detected, 0.04).matches).toBe(6);
  });

  it('[LI2] calls nothing against nothing perfect, and nothing against something none', () => {
    expect(scoreOnsets([], [], 0.05)).toEqual({ matches: 0, precision: 1, recall: 1, f: 1 });
    expect(scoreOnsets([1], [], 0.05).f).toBe(0);
    expect(scoreOnsets([], [1], 0.05).f).toBe(0);
  });

  it('[LI3] refuses milliseconds, negative and unsorted times', () => {
    expect(() => matchOnsets([1000, 200_000], [], 0.05)).toThrow(/are they in milliseconds\?/);
    expect(() => matchOnsets([-1], [], 0.05)).toThrow(RangeError);
    expect(() => matchOnsets([], [2, 1], 0.05)).toThrow(/sort them/);
    expect(() => matchOnsets([Number.NaN], [], 0.05)).toThrow(RangeError);
  });
});
