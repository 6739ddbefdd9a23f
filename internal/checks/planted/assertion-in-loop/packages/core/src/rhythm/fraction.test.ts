import { expect, it } from 'vitest';

it('[AA1] runs', () => {
  for (const each of [1, 2].filter((one) => one > 1)) expect(each).toBe(2);
});
