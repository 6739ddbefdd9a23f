import { expect, it } from 'vitest';
import { joined } from './joined.ts';

it('[SI8700] pieces are joined in their order, and one alone is not copied', () => {
  const [one, two] = [Float32Array.of(1, 2), Float32Array.of(3)];
  // definition: what comes first stands first, and nothing is nothing
  expect([...joined([one, new Float32Array(0), two])]).toEqual([1, 2, 3]);
  expect(joined([one])).toBe(one);
  expect(joined([])).toHaveLength(0);
});
