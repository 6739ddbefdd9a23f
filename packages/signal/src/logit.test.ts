import { expect, it } from 'vitest';
import { sigmoid } from './logit.ts';

it('[SI13] the probability of a logit has the odds whose logarithm it is', () => {
  // definition: ln(p/(1 − p)); odds of 1, of 3 to 1 and of 1 to 3
  expect(sigmoid(0)).toBe(0.5);
  expect(sigmoid(Math.log(3))).toBeCloseTo(0.75, 12);
  expect(sigmoid(-Math.log(3))).toBeCloseTo(0.25, 12);
  expect([sigmoid(-800), sigmoid(800)]).toEqual([0, 1]);
});
