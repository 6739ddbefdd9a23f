import { expect, it } from 'vitest';

it('[AA9] holds', () => {
  expect(1).toBe(1);
});
