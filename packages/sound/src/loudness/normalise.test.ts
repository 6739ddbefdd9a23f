import { FullScaleDb, Hertz, Lufs, seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { both, sines } from '../../test/signals.ts';
import { limitTruePeak } from './limiter.ts';
import { measureLoudness } from './measure.ts';
import { normaliseLoudness } from './normalise.ts';

const RATE = Hertz(44100);
/** Of single precision, for amplitudes near 1. */
const ROUNDING = 1e-7;

/** Quiet noise with short loud bursts, as drums are. */
function spiky(): Float32Array {
  const random = seededRandom('spikes');
  return Float32Array.from({ length: 6 * RATE }, (_, i) => {
    const since = (i % 20000) / 400;
    return (2 * random.next() - 1) * (0.05 + 0.9 * Math.exp(-since));
  });
}

describe('setting loudness', () => {
  it.each([-30, -23, -18])('[SO6] meets a target of %i LUFS within 0.5 LU', (target) => {
    const result = normaliseLoudness(both(spiky(), RATE), Lufs(target));
    const found = measureLoudness(result.audio);
    expect(Math.abs(found.integratedLufs - target)).toBeLessThan(0.5);
    expect(Math.abs(found.integratedLufs - result.loudnessLufs)).toBeLessThan(0.01);
  });

  it.each([-30, -14, -9, -3])('[SO7] never passes −1 dBTP, whatever the target (%i LUFS)', (target) => {
    const result = normaliseLoudness(both(spiky(), RATE), Lufs(target));
    // standard: EBU R 128: maximum true peak −1 dBTP
    expect(measureLoudness(result.audio).truePeakDbtp).toBeLessThanOrEqual(-1);
    expect(result.limited).toBe(target > -20);
  });

  it('[SO7] leaves sound alone that is low enough already', () => {
    const low = both(sines([[-6, 1]], 440, RATE), RATE);
    expect(limitTruePeak(low, FullScaleDb(-1))).toBe(low);
  });

  it('[SO7] turns a peak down before it comes, both channels alike', () => {
    const left = sines([[-20, 1]], 440, RATE);
    const right = left.slice();
    left[22050] = 1.5;
    const limited = limitTruePeak({ left, right, sampleRateHz: RATE }, FullScaleDb(-1));
    expect(Math.abs(limited.left[22050] as number)).toBeLessThanOrEqual(10 ** (-1 / 20) + ROUNDING);
    const gain = (limited.right[22060] as number) / (right[22060] as number);
    expect(gain).toBeLessThan(0.7);
    expect((limited.left[22060] as number) / (left[22060] as number)).toBeCloseTo(gain, 5);
    expect(limited.right[20000]).toBe(right[20000]);
  });

  it('[SO8] refuses a target that cannot be meant, and leaves silence silent', () => {
    const silence = both(new Float32Array(RATE), RATE);
    expect(() => normaliseLoudness(silence, Lufs(16))).toThrow(
      'At targetLufs: found 16, expected −70 to 0. Is the sign missing?',
    );
    expect(() => normaliseLoudness(silence, Lufs(Number.NaN))).toThrow(RangeError);
    expect(normaliseLoudness(silence, Lufs(-18)).audio).toBe(silence);
  });
});
