import { expect, it } from 'vitest';
import { gram, inverse, nonNegative } from './solve.ts';

it('[LI7102] a matrix times its inverse is one', () => {
  // worked by hand: the determinant of (4 1; 1 3) is 11
  const found = inverse([
    [4, 1],
    [1, 3],
  ]).flat();
  for (const [i, value] of [3 / 11, -1 / 11, -1 / 11, 4 / 11].entries())
    expect(found[i]).toBeCloseTo(value, 12);
  expect(
    gram([
      [1, 2],
      [3, 0],
    ]),
  ).toEqual([
    [10, 2],
    [2, 4],
  ]);
});

it('[LI7102] amounts are never under nothing, and else those of least squares', () => {
  const rows = [
    [1, 0],
    [0, 1],
    [1, 1],
  ];
  // definition: 2 of the first and 3 of the second
  for (const [i, value] of nonNegative(rows, [2, 3, 5]).entries()) expect(value).toBeCloseTo([2, 3][i]!, 9);
  // worked by hand: without the second, which would be −1, (2 + 1) / 2 of the first come nearest
  expect(nonNegative(rows, [2, -1, 1])).toEqual([1.5, 0]);
});
