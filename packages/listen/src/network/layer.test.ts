import { seededRandom } from '@shedbook/core';
import { expect, it } from 'vitest';
import { layOut, runLayer } from './layer.ts';

it.each([
  { count: 1, rows: 1, width: 3, step: 3 },
  { count: 4, rows: 2, width: 5, step: 5 },
  { count: 6, rows: 8, width: 12, step: 4 },
  { count: 13, rows: 14, width: 9, step: 18 },
  { count: 70, rows: 15, width: 1000, step: 10 },
])('[LI42] a layer is the matrix product of its definition, $count windows by $rows rows', (shape) => {
  const { count, rows, width, step } = shape;
  const random = seededRandom(`${count}`);
  const some = (length: number) => Float64Array.from({ length }, () => random.next() - 0.5);
  const [weights, bias, input] = [some(rows * width), some(rows), some(2 + count * step + width)];
  for (let i = 0; i < input.length; i += 1) if (random.next() < 0.5) input[i] = 0;
  const output = new Float64Array(1 + count * (rows + 2)).fill(9);
  const pass = { input, inputAt: 2, step, count, outputAt: 1, outputStep: rows + 2 };
  const layer = layOut({ weights, bias });
  runLayer(layer, { ...pass, output, rectify: true });
  const free = output.slice().fill(9);
  runLayer(layer, { ...pass, output: free, rectify: false });
  const wanted = output.slice().fill(9);
  const wantedFree = wanted.slice();
  for (let window = 0; window < count; window += 1) {
    for (let row = 0; row < rows; row += 1) {
      let sum = bias[row] as number;
      for (let k = 0; k < width; k += 1) {
        sum += (weights[row * width + k] as number) * (input[2 + window * step + k] as number);
      }
      // definition: a row's bias and its products with the window, negative sums made 0 or left
      wanted[1 + window * (rows + 2) + row] = Math.max(0, sum);
      wantedFree[1 + window * (rows + 2) + row] = sum;
    }
  }
  expect([...output]).toEqual([...wanted]);
  expect([...free]).toEqual([...wantedFree]);
});

it('[LI42] a layer that is too wide is refused', () => {
  const layer = { weights: new Float64Array(1025), bias: new Float64Array(1) };
  expect(() => layOut(layer)).toThrow('1025 inputs');
});
