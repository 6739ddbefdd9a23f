import { expect, it } from 'vitest';
import { thirds } from '../../test/thirds.ts';
import { twoThirds } from './fraction.ts';

it('[AA1] tells two thirds from one', () => {
  expect(twoThirds()).not.toBe(thirds);
});

function same(found: unknown, expected: unknown): void {
  expect(found).toEqual(expected);
}

const TABLE = [
  [2, 4],
  [3, 9],
] as const;

it('[AA1] asserts by a helper', () => {
  same(twoThirds().numerator, 2);
});

it('[AA1] asserts over a table', () => {
  for (const [value, square] of TABLE) same(value ** 2, square);
});

it('[AA1] asserts as often as it counts', () => {
  for (let value = 0; value < 3; value += 1) expect(value * 2).toBe(value + value);
});

it('[AA1] asserts whichever way it goes', () => {
  if (twoThirds().numerator > 1) expect(twoThirds().numerator).toBe(2);
  else expect(twoThirds().numerator).toBe(1);
});
