import { expect, it } from 'vitest';
import { swingTask } from '../../../../internal/testing/loops.ts';
import { allowedMs, justNoticedMs } from '../perception/perception.ts';
import { ALLOWANCES, LEVELS, type Level } from './levels.data.ts';
import { readLevel } from './read-level.ts';

/** Products of decimal fractions: rounding only. */
const MS_DECIMALS = 9;

it('[CH1] the interval is the one to the nearest stroke of any limb, the loop coming round again', () => {
  const [first, ...rest] = swingTask(1, 60).strokes.filter(({ voice }) => voice === 'ride');
  // definition: a triplet of a second lasts 1/3 s; the 1 of the loop follows the let of 4 of its last bar
  expect(first?.intervalSeconds).toBeCloseTo(1 / 3, MS_DECIMALS);
  expect(rest.at(-1)?.intervalSeconds).toBeCloseTo(1 / 3, MS_DECIMALS);
});

it('[CH2] two strokes that an advanced or intermediate student plays together cannot be certain to be heard apart', () => {
  // published: order threshold of two events 22 ms (75 % point), near-certain above 60 ms (mazurka.org.uk/experiments)
  const furthestApart = (level: Level) => 2 * allowedMs(ALLOWANCES[level], 1, true);
  expect(furthestApart('advanced')).toBeLessThanOrEqual(22);
  expect(furthestApart('intermediate')).toBeLessThan(60);
  expect(furthestApart('beginner')).toBeLessThanOrEqual(60);
});

it('[CH2] every level allows more than anyone could notice, and a stricter one allows less', () => {
  const intervals = [0.1, 0.24, 0.5, 1];
  for (const interval of intervals) {
    const allowed = LEVELS.map((level) => allowedMs(ALLOWANCES[level], interval, false));
    expect(Math.min(...allowed)).toBeGreaterThan(justNoticedMs(interval));
    // definition: levels stand in order of strictness
    expect(allowed).toEqual(allowed.toSorted((a, b) => b - a));
  }
});

it('[JU2] a stricter level allows no more of anything', () => {
  const [first] = LEVELS;
  const figures = Object.keys(ALLOWANCES[first]) as (keyof (typeof ALLOWANCES)[Level])[];
  expect(figures).toContain('balanceDb');
  for (const figure of figures) {
    const allowed = LEVELS.map((level) => ALLOWANCES[level][figure]);
    // definition: levels stand in order of strictness
    expect(allowed, figure).toEqual(allowed.toSorted((a, b) => b - a));
  }
});

it('[JU2] a level is read by its name and by the one that it had before', () => {
  expect(LEVELS.map(readLevel)).toEqual(LEVELS);
  // definition: the names that practice pages have kept, in order of strictness
  expect(['first steps', 'growing', 'fluent'].map(readLevel)).toEqual(LEVELS);
  expect(['', 'Beginner', 'begginer', 0, null, undefined, ['advanced']].map(readLevel)).toEqual(
    Array.from({ length: 7 }, () => null),
  );
});
