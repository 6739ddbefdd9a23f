import { seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { ANALYSIS_RATE } from '../../signal/bands.data.ts';
import { evened } from './evened.ts';
import { exactBars } from './exact-bars.ts';
import { type DueStroke, machineShares } from './shares.ts';

const BARS = 8;
const BAR_SECONDS = 2.0007;
const FROM_SECONDS = 0.5;
const BURST = 2000;

const random = seededRandom('bursts');
const burst = () =>
  Float32Array.from({ length: BURST }, (_, i) => (random.next() - 0.5) * Math.exp(-i / 300));

/** A sound of bursts, and of a hiss far under them. */
function soundOf(
  strokes: readonly { readonly seconds: number; readonly burst: Float32Array }[],
): Float32Array {
  const sound = Float32Array.from({ length: 18 * ANALYSIS_RATE }, () => 0.001 * (random.next() - 0.5));
  for (const { seconds, burst: samples } of strokes) {
    const at = Math.round(seconds * ANALYSIS_RATE);
    for (const [i, sample] of samples.entries()) sound[at + i] = sound[at + i]! + sample;
  }
  return sound;
}

const places = (beats: readonly number[]) =>
  Array.from({ length: BARS }, (_, bar) => bar).flatMap((bar) =>
    beats.map((beat) => FROM_SECONDS + BAR_SECONDS * (bar + beat / 4)),
  );
const HITS = places([0, 1, 2, 3]);
const BACK_BEATS = places([1, 3]);

/** A machine's strokes are one sound, and a hand's each another, 8 ms round their places. */
const byMachine = (at: readonly number[], one = burst()) => at.map((seconds) => ({ seconds, burst: one }));
const byHand = (at: readonly number[]) =>
  at.map((seconds) => ({ seconds: seconds + 0.016 * (random.next() - 0.5), burst: burst() }));

/** The bars as a take is followed, a little off. */
const tracked = Array.from({ length: BARS }, (_, bar) => ({
  startSeconds: FROM_SECONDS + 0.004 * Math.sin(7 * bar) + BAR_SECONDS * bar,
  barSeconds: BAR_SECONDS,
}));
const due: readonly DueStroke[] = [
  ...HITS.map((seconds) => ({ voice: 'hihat' as const, seconds, levelDb: 0 })),
  ...BACK_BEATS.map((seconds) => ({ voice: 'snare' as const, seconds, levelDb: 0 })),
];

describe('a machine in a take', () => {
  it('[LI7102] bars that come again exactly are found to a few millionths, and those of hands are none', () => {
    const beside = soundOf([...byHand(HITS), ...byMachine(BACK_BEATS)]);
    const found = exactBars(evened(beside), tracked);
    // definition: half a sample over seven bars is 1.6 millionths of a bar of two seconds
    expect(Math.abs((found?.barSeconds ?? 0) / BAR_SECONDS - 1)).toBeLessThan(3e-6);
    expect(exactBars(evened(soundOf([...byHand(HITS), ...byHand(BACK_BEATS)])), tracked)).toBeNull();
    expect(exactBars(evened(beside), tracked.slice(0, 3))).toBeNull();
    expect(exactBars(new Float32Array(beside.length), tracked)).toBeNull();
  });

  it('[LI7102] tells of voices that come together which of them is the same each time', () => {
    const snare = machineShares(soundOf([...byHand(HITS), ...byMachine(BACK_BEATS)]), due);
    expect(snare.get('snare')?.share).toBeGreaterThan(0.7);
    expect(snare.get('hihat')?.share).toBeLessThan(0.1);
    const hat = machineShares(soundOf([...byMachine(HITS), ...byHand(BACK_BEATS)]), due);
    expect(hat.get('hihat')?.share).toBeGreaterThan(0.7);
    expect(hat.get('snare')?.share).toBeLessThan(0.1);
  });

  it('[LI7102] of a voice that both play it tells how much of it is a machine’s', () => {
    const one = burst().map((sample) => sample / Math.sqrt(10));
    const both = soundOf([...byHand(HITS), ...byHand(BACK_BEATS), ...byMachine(BACK_BEATS, one)]);
    // definition: a tenth of the power is the machine's, an eleventh of both
    expect(machineShares(both, due).get('snare')?.share).toBeLessThan(0.25);
  });
});
