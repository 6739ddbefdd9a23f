import { expect, it } from 'vitest';
import { ALLOWANCES, LEVELS } from '../level/levels.data.ts';
import { APART_MS, DISPLACEMENT, TEMPO_PERCENT } from './perception.data.ts';
import { allowedTempoPercent, justNoticedMs, tempoChangePercent } from './perception.ts';

/** Products of decimal fractions: rounding only. */
const MS_DECIMALS = 9;

it('[JU1] what is just noticed is what was published', () => {
  // published: Friberg & Sundberg 1995, JASA 98(5), abstract: 6 ms below about 240 ms, 2.5 % above
  expect(DISPLACEMENT).toEqual({ leastMs: 6, shareOfInterval: 0.025 });
  // published: order threshold of two events 22 ms, 75 % point (mazurka.org.uk/experiments)
  expect(APART_MS).toBe(22);
  // published: 26.5 ms of 1000 ms, and 62.2 beside 60 a minute (mazurka.org.uk/experiments)
  const [least, most] = [tempoChangePercent(1000, 1000 - 26.5), tempoChangePercent(62.2, 60)];
  expect(least).toBeCloseTo(2.72, 2);
  expect(most).toBeCloseTo(3.67, 2);
  expect(TEMPO_PERCENT).toBe(3.3);
  expect(TEMPO_PERCENT).toBeGreaterThan(least);
  expect(TEMPO_PERCENT).toBeLessThan(most);
});

it('[CH1] a displacement is noticed from 6 ms on, and from 2.5 % of longer intervals', () => {
  // published: Friberg & Sundberg 1995, JASA 98(5): 2.5 % of the interval from 240 ms on, 6 ms below
  expect([0.1, 0.125, 0.24].map(justNoticedMs)).toEqual([6, 6, 6]);
  expect(justNoticedMs(0.25)).toBeCloseTo(6.25, MS_DECIMALS);
  expect(justNoticedMs(0.4)).toBeCloseTo(10, MS_DECIMALS);
  expect(justNoticedMs(1)).toBeCloseTo(25, MS_DECIMALS);
});

it('[JU1] the strictest level asks of the tempo what can be noticed, and no level more', () => {
  const allowed = LEVELS.map((level) => allowedTempoPercent(ALLOWANCES[level]));
  // published: 3.3 % is just noticed; definition: once, twice and three times that
  expect(allowed.map((percent) => percent.toFixed(1))).toEqual(['9.9', '6.6', '3.3']);
});
