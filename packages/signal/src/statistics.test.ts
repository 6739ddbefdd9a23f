import { expect, it } from 'vitest';
import {
  fitLine,
  lowerMedian,
  mean,
  median,
  medianDeviation,
  nearestQuantile,
  quantile,
  spread,
} from './statistics.ts';

it('[SI10] the median of an even count is the mean of the two in the middle, in whatever order they come', () => {
  // definition
  expect(median([3, 1, 2])).toBe(2);
  expect(median([40, 10, 20, 30])).toBe(25);
  expect(median([-5])).toBe(-5);
  // no order of text: 10 comes after 9
  expect(median([10, 9, 100])).toBe(10);
});

it('[SI10] an order statistic that is one of the values is called so', () => {
  expect(lowerMedian([40, 10, 20, 30])).toBe(20);
  expect(lowerMedian([3, 1, 2])).toBe(2);
  // definition: the place (n − 1)·q, rounded: 9·0.95 = 8.55 is the tenth of ten
  const ten = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
  expect(nearestQuantile(ten, 0.95)).toBe(10);
  expect(nearestQuantile(ten, 0.1)).toBe(2);
});

it('[SI10] quantiles lie on the straight line between their neighbours', () => {
  // library: numpy.quantile([15, 20, 35, 40, 50], 0.4) = 29.0, its default method
  expect(quantile([15, 20, 35, 40, 50], 0.4)).toBeCloseTo(29, 12);
  expect(quantile([2, 1], 0)).toBe(1);
  expect(quantile([2, 1], 1)).toBe(2);
});

it('[SI10] of nothing every middle is 0, and nothing is changed by asking', () => {
  expect([
    mean([]),
    median([]),
    lowerMedian([]),
    quantile([], 0.9),
    nearestQuantile([], 0.9),
    spread([]),
  ]).toEqual([0, 0, 0, 0, 0, 0]);
  const values = [3, 1, 2];
  median(values);
  expect(values).toEqual([3, 1, 2]);
  expect(mean(values)).toBe(2);
});

it('[SI11] the spread of normal values is their standard deviation, and wild values hardly move it', () => {
  // definition: quantiles of the standard normal distribution at 5, 15, … 95 % (NIST/SEMATECH e-Handbook, 1.3.6.7.1)
  const normal = [0.1257, 0.3853, 0.6745, 1.0364, 1.6449].flatMap((z) => [7 + 2 * z, 7 - 2 * z]);
  expect(medianDeviation(normal)).toBeCloseTo(2 * 0.6745, 4);
  expect(spread(normal)).toBeCloseTo(2, 3);
  expect(spread([...normal.slice(2), 900, -900])).toBeLessThan(3.2);
});

it('[SI12] a line through points on a line is found, and a heavier point draws it nearer', () => {
  const on = [1, 2, 5].map((x) => ({ x, y: 3 - 0.5 * x, weight: x }));
  expect(fitLine(on).slope).toBeCloseTo(-0.5, 12);
  expect(fitLine(on).at).toBeCloseTo(3, 12);
  // definition: least squares through (0, 0), (1, 0) and (1, 3): the mean of what lies at 1, weighted 2 to 1, is 1
  const two = [
    { x: 0, y: 0, weight: 1 },
    { x: 1, y: 0, weight: 2 },
    { x: 1, y: 3, weight: 1 },
  ];
  expect(fitLine(two).slope).toBeCloseTo(1, 12);
  expect(fitLine([])).toEqual({ at: 0, slope: 0 });
  expect(fitLine([{ x: 4, y: 2, weight: 1 }])).toEqual({ at: 2, slope: 0 });
});
