import { expect, it } from 'vitest';
import { FirstLateness } from './first-lateness.ts';

it('[ST141] is found once, from two rounds that agree, and only where it is worth it', () => {
  const from = (rounds: readonly (number | null)[]) => {
    const lateness = new FirstLateness();
    return rounds.map((ms) => lateness.next(ms));
  };
  // definition: the mean of two rounds within 25 ms of each other
  expect(from([null, 60, 70, 80])).toEqual([null, null, 65, null]);
  expect(from([10, 90, 100])).toEqual([null, null, 95]);
  expect(from([3, 5, 60, 62])).toEqual([null, null, null, null]);
  expect(from([-40, -30])).toEqual([null, -35]);
});
