import { seededRandom } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findClick, makeClick } from './click-finder.ts';
import { HEARD_REACH, measureRoundTrip, PLAYED_REACH } from './latency.ts';

const CLICKS = Array.from({ length: 10 }, (_, index) => 1 + index * 0.6);
const RATE = 44_100;

describe('the round trip', () => {
  it('[ST71] is the median of the clicks that were heard, with its spread', () => {
    const lags = [41, 40, 42, 40, 39, 40, 41, 40, 38, 40];
    const onsets = CLICKS.map((click, index) => click + (lags[index] as number) / 1000);
    const trip = measureRoundTrip(CLICKS, onsets, HEARD_REACH);
    // definition: the median of ten values is the mean of the fifth and sixth: 40 and 40
    expect(trip?.medianMs).toBeCloseTo(40, 6);
    // definition: absolute deviations in order 0 0 0 0 0 1 1 1 2 2, median 0.5
    expect(trip?.spreadMs).toBeCloseTo(0.5, 6);
    expect(trip).toMatchObject({ heard: 10, played: 10 });
  });

  it('[ST71] is not moved by a few strange onsets or by clicks that were not heard', () => {
    const onsets = CLICKS.slice(0, 8).map((click, index) => click + (index < 2 ? 0.3 : 0.05));
    expect(measureRoundTrip(CLICKS, onsets, HEARD_REACH)).toMatchObject({ heard: 6, played: 10 });
    expect(measureRoundTrip(CLICKS, onsets, HEARD_REACH)?.medianMs).toBeCloseTo(50, 6);
  });

  it('[ST71] is nothing when fewer than half of the clicks were heard', () => {
    expect(measureRoundTrip(CLICKS, [], HEARD_REACH)).toBeNull();
    const four = CLICKS.slice(0, 4).map((click) => click + 0.05);
    expect(measureRoundTrip(CLICKS, four, HEARD_REACH)).toBeNull();
  });

  it('[ST71] may be negative for hands, which play ahead of a click, and never for a loudspeaker', () => {
    const early = CLICKS.map((click) => click - 0.02);
    // published: Aschersleben 2002, Brain and Cognition 48(1): taps precede the tone by 20 to 80 ms
    expect(measureRoundTrip(CLICKS, early, PLAYED_REACH)?.medianMs).toBeCloseTo(-20, 6);
    expect(measureRoundTrip(CLICKS, early, HEARD_REACH)).toBeNull();
  });

  it('[ST71] follows any common delay exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 440 }), (delayMs) => {
        const onsets = CLICKS.map((click) => click + delayMs / 1000);
        expect(measureRoundTrip(CLICKS, onsets, HEARD_REACH)?.medianMs).toBeCloseTo(delayMs, 6);
      }),
      { numRuns: 100, seed: 70 },
    );
  });
});

/** Hiss of a level, with a click in it where one is wanted. */
function hiss(level: number, clickAt: number | null, gain = 0.1): Float32Array {
  const random = seededRandom('hiss');
  const samples = Float32Array.from({ length: RATE }, () => level * (random.next() - random.next()));
  if (clickAt !== null) {
    makeClick(RATE).forEach((value, i) => {
      samples[clickAt + i] = (samples[clickAt + i] as number) + gain * value;
    });
  }
  return samples;
}

describe('finding a click', () => {
  it('[ST72] finds it to the sample, soft or loud', () => {
    // definition: where it was put
    expect(findClick(hiss(0, 12_345), 0, RATE, makeClick(RATE))).toBe(12_345);
    expect(findClick(hiss(0.02, 20_000, 0.05), 0, RATE, makeClick(RATE))).toBe(20_000);
  });

  it('[ST72] finds none in hiss and none in silence', () => {
    expect(findClick(hiss(0.1, null), 0, RATE, makeClick(RATE))).toBeNull();
    expect(findClick(new Float32Array(RATE), 0, RATE, makeClick(RATE))).toBeNull();
  });

  it('[ST72] looks only where it is told', () => {
    expect(findClick(hiss(0.001, 30_000), 0, 20_000, makeClick(RATE))).toBeNull();
  });
});
