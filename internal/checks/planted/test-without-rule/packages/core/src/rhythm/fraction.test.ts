import { expect, it } from 'vitest';

it('holds', () => {
  expect(1).toBe(1);
});
