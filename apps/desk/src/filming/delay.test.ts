import { seededRandom } from '@shedbook/core';
import { expect, it } from 'vitest';
import { delayOf } from './delay.ts';

/** Three strokes of noise that die away, and what came of them later and a little changed. */
function heard(delay: number) {
  const random = seededRandom('delay');
  const asked = new Float32Array(24_000);
  for (const start of [6000, 12_000, 18_000])
    for (let i = 0; i < 3000; i += 1)
      asked[start + i] = (asked[start + i] as number) + (2 * random.next() - 1) * Math.exp(-i / 600);
  const came = Float32Array.from(asked, (_, i) => (asked[i - delay] ?? 0) + 0.02 * (2 * random.next() - 1));
  return delayOf(asked, came);
}

it('[ST6900] finds how many samples later a sound came, sooner as well, and nothing where nothing sounds', () => {
  // 1024 and 2112 samples are the delays that encoders of AAC commonly have (common practice).
  expect([0, 1, 312, 1024, 2112, -480].map(heard)).toEqual([0, 1, 312, 1024, 2112, -480]);
  expect(delayOf(new Float32Array(9000), new Float32Array(9000))).toBe(0);
});
