import { describe, expect, it } from 'vitest';
import { truePeakOf } from './true-peak.ts';

const RATE = 48000;

function sine(fraction: number, degrees: number, amplitude: number): Float32Array {
  const angle = (i: number) => 2 * Math.PI * fraction * i + (degrees * Math.PI) / 180;
  return Float32Array.from({ length: 4800 }, (_, i) => {
    const fade = Math.min(1, i / 480, (4800 - i) / 480);
    return fade * amplitude * Math.sin(angle(i));
  });
}

describe('true peak', () => {
  it.each([
    // standard: EBU Tech 3341 table 1, cases 15 to 19 (+0.2 / −0.4 dB)
    ['15', 1 / 4, 0, 0.5, -6],
    ['16', 1 / 4, 45, 0.5, -6],
    ['17', 1 / 6, 60, 0.5, -6],
    ['18', 1 / 8, 67.5, 0.5, -6],
    ['19', 1 / 4, 45, 1.41, 3],
  ])('[SO5] is right for EBU Tech 3341 case %s', (_, fraction, degrees, amplitude, expected) => {
    const found = 20 * Math.log10(truePeakOf(sine(fraction, degrees, amplitude), RATE));
    expect(found).toBeLessThan(expected + 0.2);
    expect(found).toBeGreaterThan(expected - 0.4);
  });

  it.each([0, 1, 2, 3])('[SO5] finds a burst that lies %i quarter samples off', (offset) => {
    // standard: EBU Tech 3341 table 1, cases 20 to 23: 0.0 dBTP, +0.2 / −0.4 dB
    const burst = Float32Array.from({ length: 2400 }, (_, i) => {
      const at = i + offset / 4;
      const carrier = Math.sin((2 * Math.PI * at) / 6);
      const middle = Math.exp(-(((at - 1200) / 300) ** 2));
      return middle * carrier;
    });
    const found = 20 * Math.log10(truePeakOf(burst, RATE));
    expect(found).toBeLessThan(0.2);
    expect(found).toBeGreaterThan(-0.4);
  });

  it('[SO5] is never under the highest sample', () => {
    const spike = new Float32Array(1000);
    spike[500] = -0.8;
    expect(truePeakOf(spike, RATE)).toBeGreaterThanOrEqual(Math.fround(0.8));
  });

  it('[SO5] is the same where soft stretches are passed over and where they are not', () => {
    const quietThenLoud = new Float32Array(8000);
    for (let i = 0; i < 8000; i += 1)
      quietThenLoud[i] = (i < 6000 ? 0.2 : 0.5) * Math.sin((Math.PI * (i + 0.5)) / 2);
    const loud = quietThenLoud.slice(5900);
    expect(truePeakOf(quietThenLoud, RATE)).toBe(truePeakOf(loud, RATE));
  });
});
