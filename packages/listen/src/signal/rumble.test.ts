import { describe, expect, it } from 'vitest';
import { ANALYSIS_RATE } from './bands.data.ts';
import { RumbleFilter } from './rumble.ts';

/** Level of a steady sine after the filter, in dB, cut into two blocks at sample 1001. */
function gainDb(hz: number): number {
  const samples = Float32Array.from({ length: 2 * ANALYSIS_RATE }, (_, i) =>
    Math.sin((2 * Math.PI * hz * i) / ANALYSIS_RATE),
  );
  const filter = new RumbleFilter();
  filter.run(samples, 0, 1001);
  filter.run(samples, 1001, samples.length);
  const steady = samples.subarray(ANALYSIS_RATE);
  const square = steady.reduce((sum, x) => sum + x * x, 0) / steady.length;
  return 10 * Math.log10(2 * square);
}

describe('rumble', () => {
  it('[LI45] is taken out under the bass drum, and the drums are left as they are', () => {
    // definition: a Butterworth high-pass of second order is 3.01 dB down at its corner and 12 dB an octave under it
    expect(gainDb(25)).toBeCloseTo(-3.01, 1);
    expect(gainDb(6.25)).toBeCloseTo(-10 * Math.log10(1 + 4 ** 4), 0);
    expect(gainDb(50)).toBeGreaterThan(-0.3);
    expect(Math.abs(gainDb(3000))).toBeLessThan(0.01);
  });
});
