import { expect, it } from 'vitest';
import { swingTask } from '../../../../internal/testing/loops.ts';
import { APART_MS, HUMAN_SPREAD, PREFERRED_APART_MS } from '../perception/perception.data.ts';
import { allowedMs, allowedSpreadMs, justNoticedMs } from '../perception/perception.ts';
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

it('[CH2] limbs that meet may be apart by what listeners prefer, by what they hear as two, or half as much again', () => {
  const apart = (level: Level) => allowedMs(ALLOWANCES[level], 1, true);
  // published: under 19 ms preferred (JNMR 46(4), 2017); order threshold 22 ms, near-certain above 60 ms
  // (mazurka.org.uk/experiments); definition: half as much again is 33 ms
  expect(apart('advanced')).toBe(PREFERRED_APART_MS);
  expect(Math.abs(apart('intermediate') - APART_MS)).toBeLessThanOrEqual(3);
  expect(apart('beginner')).toBe(1.5 * APART_MS);
});

it('[CH2] the spread of a limb may be what trained people have, or at most what untrained people have', () => {
  // from memory: Repp 2005, about 2 % of the interval in trained people and 4 % in others
  expect(ALLOWANCES.advanced.spreadShare).toBe(HUMAN_SPREAD.trained);
  expect(ALLOWANCES.beginner.spreadShare).toBe(HUMAN_SPREAD.untrained);
  // definition: a fluent hand with a spread of 10 ms is even at any tempo
  for (const bpm of [60, 120, 240])
    expect(allowedSpreadMs(ALLOWANCES.advanced, 60 / bpm)).toBeGreaterThan(10);
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
