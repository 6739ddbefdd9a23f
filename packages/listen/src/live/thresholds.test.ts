import { seededRandom } from '@shedbook/core';
import { expect, it } from 'vitest';
import { Thresholds } from './thresholds.ts';

/** Thresholds after 200 logits around each of two middles, a unit wide on either side. */
function after(there: number, elsewhere: number): Thresholds {
  const thresholds = new Thresholds(new Set(['ride']));
  const random = seededRandom('kit');
  for (let i = 0; i < 200; i += 1) {
    thresholds.learn('ride', there + 2 * random.next() - 1, {});
    thresholds.learn('ride', elsewhere + 2 * random.next() - 1, null);
  }
  return thresholds;
}

it('[LI38] a written voice needs what lies between its sound here and the sound of the others', () => {
  const fresh = new Thresholds(new Set(['ride']));
  const needed = (of: Thresholds) => of.needed('ride', true);
  // definition: halfway between middles with the same spread
  expect(needed(after(-0.5, -3))).toBeGreaterThan(-1.5 - 0.3);
  expect(needed(after(-0.5, -3))).toBeLessThan(-1.5 + 0.3);
  expect(needed(after(4, -3))).toBeGreaterThan(needed(after(1, -3)));
  // definition: what sounds no different is not believed for being written
  expect(needed(after(-3, -3))).toBeGreaterThan(needed(fresh) + 0.5);
  expect(fresh.needed('ride', false)).toBeGreaterThan(fresh.needed('ride', true));
  expect(fresh.needed('crash', false)).toBeGreaterThan(fresh.needed('ride', false));
});

it('[LI38] of all that is heard near one written place the highest counts', () => {
  const once = new Thresholds(new Set(['ride']));
  const often = new Thresholds(new Set(['ride']));
  for (let i = 0; i < 100; i += 1) {
    const place = {};
    once.learn('ride', 3, place);
    for (const logit of [-4, 3, -2]) often.learn('ride', logit, place);
  }
  expect(often.needed('ride', true)).toBe(once.needed('ride', true));
});
