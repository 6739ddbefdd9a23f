import { expect, it } from 'vitest';
import { swingTask } from '../../../../internal/testing/loops.ts';
import { CLEAN_RULES, STUDENT_LEVELS } from './level.data.ts';
import { allowedMs, justNoticeableMs } from './tolerance.ts';

/** Products of decimal fractions: rounding only. */
const MS_DECIMALS = 9;

it('[CH1] the just noticeable displacement is 2.5 percent of the interval, and never under 6 ms', () => {
  // published: Friberg & Sundberg 1995, JASA 98(5): 2.5 % of the interval from 240 ms on, 6 ms below
  expect(justNoticeableMs(0.25)).toBeCloseTo(6.25, MS_DECIMALS);
  expect(justNoticeableMs(1)).toBeCloseTo(25, MS_DECIMALS);
  expect(justNoticeableMs(0.24)).toBeCloseTo(6, MS_DECIMALS);
  expect(justNoticeableMs(0.125)).toBe(6);
  expect(justNoticeableMs(0.1)).toBe(6);
});

it('[CH1] the interval is the one to the nearest stroke of any limb, the loop coming round again', () => {
  const [first, ...rest] = swingTask(1, 60).strokes.filter(({ voice }) => voice === 'ride');
  // definition: a triplet of a second lasts 1/3 s; the 1 of the loop follows the let of 4 of its last bar
  expect(first?.intervalSeconds).toBeCloseTo(1 / 3, MS_DECIMALS);
  expect(rest.at(-1)?.intervalSeconds).toBeCloseTo(1 / 3, MS_DECIMALS);
});

it('[CH2] two strokes that a fluent or growing student plays together cannot be certain to be heard apart', () => {
  // published: order threshold of two events 22 ms (75 % point), near-certain above 60 ms (mazurka.org.uk/experiments)
  const furthestApart = (level: keyof typeof CLEAN_RULES) => 2 * allowedMs(CLEAN_RULES[level], 1, true);
  expect(furthestApart('fluent')).toBeLessThanOrEqual(22);
  expect(furthestApart('growing')).toBeLessThan(60);
  expect(furthestApart('first steps')).toBeLessThanOrEqual(60);
});

it('[CH2] every level allows more than anyone could notice, and a stricter one allows less', () => {
  const intervals = [0.1, 0.24, 0.5, 1];
  for (const interval of intervals) {
    const allowed = STUDENT_LEVELS.map((level) => allowedMs(CLEAN_RULES[level], interval, false));
    expect(Math.min(...allowed)).toBeGreaterThan(justNoticeableMs(interval));
    // definition: levels stand in order of strictness
    expect(allowed).toEqual(allowed.toSorted((a, b) => b - a));
  }
});
