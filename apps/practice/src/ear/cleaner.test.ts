import { seededRandom } from '@shedbook/core';
import { energyOf } from '@shedbook/signal';
import { expect, it } from 'vitest';
import { Cleaner } from './cleaner.ts';

const RATE = 44_100;
const BLOCK = 128;
const FIRST_FRAME = 5 * RATE;
const DELAY = 1764;

it('[ST192] takes what the page plays out of what its microphone hears, on one clock', () => {
  const random = seededRandom('clicks');
  // Clicks of 20 ms, four a second, and nobody else.
  const played = Float32Array.from({ length: 4 * RATE }, (_, i) =>
    i % (RATE / 4) < 882 ? random.next() - 0.5 : 0,
  );
  const heard = played.map((_, i) => 0.4 * (played[i - DELAY] ?? 0));
  const cleaner = new Cleaner();
  const beside = cleaner.from(6);
  expect(beside.heard).toBeNull();
  expect(beside.isDoubtful(1)).toBe(false);
  let next = FIRST_FRAME;
  const last: number[] = [];
  for (let at = 0; at + BLOCK <= played.length; at += BLOCK) {
    // A block is lost: silence stands for it.
    if (at === 30 * BLOCK) continue;
    const block = {
      frame: FIRST_FRAME + at,
      samples: heard.slice(at, at + BLOCK),
      played: played.slice(at, at + BLOCK),
    };
    const { frame, samples } = cleaner.clean(block, RATE);
    expect(frame).toBe(next);
    next += samples.length;
    if (at > 3 * RATE) last.push(...samples);
  }
  expect(FIRST_FRAME + played.length - next).toBeLessThan(BLOCK);
  expect(beside.heard?.delaySeconds).toBeCloseTo(DELAY / RATE, 3);
  // definition: the loudspeaker is all that the microphone hears, and at 7.3 s of the clock a click is just over
  expect(energyOf(Float32Array.from(last))).toBeLessThan(energyOf(heard.subarray(3 * RATE)) / 10);
  expect(beside.isDoubtful(7.28 - 6)).toBe(true);
});

it('[ST192] leaves a block as it is where nothing is known of what plays', () => {
  const block = { frame: 7, samples: new Float32Array(BLOCK).fill(0.1) };
  expect(new Cleaner().clean(block, RATE)).toBe(block);
});
