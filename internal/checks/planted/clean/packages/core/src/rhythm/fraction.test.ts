import { expect, it } from 'vitest';
import { thirds } from '../../test/thirds.ts';
import { twoThirds } from './fraction.ts';

it('[AA1] tells two thirds from one', () => {
  expect(twoThirds()).not.toBe(thirds);
});
