import { expect, it } from 'vitest';

it('[AA1] runs', () => {
  const check = (value: number) => expect(value).toBe(2);
  Math.max(1, 2);
});
