import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { summariseSwing, swingRatios } from './swing.ts';

function times(name: string): readonly number[] {
  const path = fileURLToPath(new URL(`../../../../internal/fixtures/swing/${name}.txt`, import.meta.url));
  return readFileSync(path, 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => Number.parseFloat(line));
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Recording, ratios counted, their mean and median, the published mean from automatic onsets, and how far it may be. */
const RECORDINGS = [
  ['709cf40e', 209, 2.683, 2.812, 2.9, 0.25],
  ['20c60566', 114, 2.601, 2.552, 2.63, 0.1],
  ['83dfafa4', 138, 2.045, 2.111, 2.08, 0.1],
  ['72d0306f', 199, 1.931, 2.0, 1.9, 0.1],
  ['d8efd19a', 253, 1.294, 1.214, 1.25, 0.1],
  ['16ff9b1f', 109, 1.548, 1.507, 1.49, 0.1],
] as const;

describe('the swing meter', () => {
  it.each(RECORDINGS)('[LI4] recording %s', (hash, count, average, middle, published, within) => {
    const ratios = swingRatios(times(`${hash}_mix`), times(`${hash}_drums`));
    // published: hand annotations of the Jazz Trio Database, internal/fixtures/swing/SOURCE.md, recomputed there
    expect(ratios).toHaveLength(count);
    expect(mean(ratios)).toBeCloseTo(average, 3);
    expect(summariseSwing(ratios)?.median).toBeCloseTo(middle, 3);
    // published: Cheston et al. 2024, mean of automatic onsets; 0.1 is the fair bar, and its source says the first row differs by 0.2
    expect(Math.abs(mean(ratios) - published)).toBeLessThan(within);
  });

  it('[LI5] gives the worked ratios', () => {
    const ratios = (beats: readonly number[], between: readonly number[]) =>
      swingRatios(
        beats,
        [...beats, ...between].toSorted((a, b) => a - b),
      );
    const close = (found: readonly number[], wanted: readonly number[]) => {
      expect(found).toHaveLength(wanted.length);
      for (const [i, ratio] of found.entries()) expect(ratio).toBeCloseTo(wanted[i] ?? Number.NaN, 9);
    };
    // library: amads, tests/test_swing.py
    close(ratios([0, 1, 2], [0.6, 1.4]), [1.5, 2 / 3]);
    close(ratios([0, 1, 2, 3, 4], [0.5, 1.2, 2.6, 3.5]), [1, 0.25, 1.5, 1]);
    close(ratios([0, 1, 2], [0.3, 0.6]), []);
    close(ratios([0, 1, 2, 3], [2.85]), []);
    expect(mean(ratios([0, 1, 2, 3], [0.5, 1.75, 2.8]))).toBeCloseTo(8 / 3, 9);
    expect(summariseSwing([])).toBeNull();
  });
});
