import { Hertz, seededRandom } from '@shedbook/core';
import { expect, it } from 'vitest';
import { findAttacks } from './attacks.ts';
import { slowDown } from './slow-down.ts';

const RATE = Hertz(16_000);
const random = seededRandom('slow');

/** Strokes that ring: noise that dies away. */
function strokes(times: readonly number[], seconds: number): Float32Array {
  const samples = new Float32Array(RATE * seconds);
  for (const time of times)
    for (let i = 0, at = Math.round(time * RATE); at + i < samples.length; i += 1)
      samples[at + i] = (samples[at + i] as number) + Math.exp(-i / (0.08 * RATE)) * (random.next() - 0.5);
  return samples;
}

function meanSquare(samples: Float32Array, from: number, to: number): number {
  const part = samples.subarray(Math.round(from * RATE), Math.round(to * RATE));
  return part.reduce((sum, value) => sum + value * value, 0) / part.length;
}

it.each([0.75, 0.5])(
  '[SO2000] sounds each attack once, as it was struck, at its slower moment: %d',
  (speed) => {
    const times = [0.25, 0.5, 0.75, 1.4];
    const plain = strokes(times, 2);
    for (const onsets of [times, []]) {
      const [slow = new Float32Array(0)] = slowDown([plain], { rateHz: RATE, speed, onsets });
      expect(slow).toHaveLength(Math.ceil(plain.length / speed));
      // definition: a moment t is heard at t / speed
      const found = findAttacks(slow, RATE).map((at) => at / RATE);
      expect(found).toEqual(times.map((time) => expect.closeTo(time / speed, 2)));
      for (const time of times) {
        const [from, to] = [Math.round(time * RATE), Math.round((time / speed) * RATE)];
        // Where the attack was found and not known, it is as near as its steps of 2 ms.
        const reach = onsets.length > 0 ? 0 : 0.003 * RATE;
        const same = Array.from({ length: 2 * reach + 1 }, (_, by) => to + by - reach).some((at) =>
          [...slow.subarray(at, at + 400)].every(
            (value, i) => Math.abs(value - (plain[from + i] as number)) < 1e-6,
          ),
        );
        expect(same, `${time}`).toBe(true);
      }
    }
  },
);

it('[SO2001] keeps pitch and level, of a tone and of noise, and channels together', () => {
  const tone = Float32Array.from({ length: RATE * 2 }, (_, i) => Math.sin((2 * Math.PI * 440 * i) / RATE));
  const how = { rateHz: RATE, speed: 0.5, onsets: [] };
  const [slow = new Float32Array(0), half = new Float32Array(0)] = slowDown(
    [tone, tone.map((value) => value / 2)],
    how,
  );
  const crossings = [...slow.keys()].filter(
    (i) => i > 0 && (slow[i - 1] as number) < 0 && (slow[i] as number) >= 0,
  );
  // definition: 440 of them a second, for four seconds
  expect(Math.abs(crossings.length - 440 * 4)).toBeLessThan(9);
  expect(half.every((value, i) => Math.abs(2 * value - (slow[i] as number)) < 1e-5)).toBe(true);
  const noise = Float32Array.from({ length: RATE * 2 }, () => random.next() - 0.5);
  const [long = new Float32Array(0)] = slowDown([noise], how);
  const changeDb = (from: number) =>
    10 * Math.log10(meanSquare(long, from, from + 0.5) / meanSquare(noise, 0.2, 1.8));
  for (const from of [0.5, 1, 2, 3]) expect(Math.abs(changeDb(from))).toBeLessThan(0.6);
});

it('[SO2001] changes nothing at full speed, breaks over nothing, and refuses a speed that is none', () => {
  const plain = strokes([0.5], 1);
  expect(slowDown([plain], { rateHz: RATE, speed: 1, onsets: [] })).toEqual([plain]);
  const [empty] = slowDown([new Float32Array(0)], { rateHz: RATE, speed: 0.5, onsets: [1, -1] });
  expect(empty).toHaveLength(0);
  for (const speed of [0, -1, 1.5, Number.NaN])
    expect(() => slowDown([plain], { rateHz: RATE, speed, onsets: [] })).toThrow(RangeError);
});
