import { Hertz } from '@shedbook/core';
import { expect, it } from 'vitest';
import { slowSamples } from './slow-sound.ts';

const RATE = Hertz(8000);

/** Short clicks, each with a sharp first sample. */
function clicks(times: readonly number[]): Float32Array {
  const samples = new Float32Array(RATE * 2);
  for (const time of times) {
    const from = Math.round(time * RATE);
    for (let i = 0; i < 200; i += 1) samples[from + i] = Math.exp(-i / 30) * (i % 2 === 0 ? 1 : -1);
  }
  return samples;
}

/** Where full clicks begin, in seconds. */
function heads(samples: Float32Array): readonly number[] {
  return [...samples.keys()].filter((i) => (samples[i] ?? 0) > 0.999).map((i) => i / RATE);
}

it.each([0.75, 0.5, 0.25])('[ST152] strokes lie further apart and keep their attacks: %d', (speed) => {
  const times = [0.25, 0.5, 0.625, 1.25];
  const slow = slowSamples(clicks(times), times, { rateHz: RATE, speed });
  // definition: a moment t is heard at t / speed
  const expected = times.map((time) => time / speed);
  const found = heads(slow);
  expect(found).toHaveLength(times.length);
  for (const [i, time] of expected.entries()) expect(Math.abs((found[i] ?? 0) - time)).toBeLessThan(2 / RATE);
  // the first samples of a stroke are those that were recorded
  const at = Math.round((found[1] ?? 0) * RATE);
  const from = Math.round(0.5 * RATE);
  expect([...slow.subarray(at, at + 100)]).toEqual([...clicks(times).subarray(from, from + 100)]);
});

it('[ST152] as fast as it was played, nothing is changed; without strokes nothing breaks', () => {
  const samples = clicks([0.5]);
  expect(slowSamples(samples, [0.5], { rateHz: RATE, speed: 1 })).toEqual(samples);
  expect(slowSamples(samples, [], { rateHz: RATE, speed: 0.5 })).toHaveLength(RATE * 4);
  expect(slowSamples(new Float32Array(0), [1, -1], { rateHz: RATE, speed: 0.5 })).toHaveLength(0);
});
