import { expect, it } from 'vitest';

it('[AA1] runs', () => {
  expect(Math.max(1, 2)).toBeDefined();
});
