import { expect, it } from 'vitest';

it('[AA1] runs', () => {
  [1, 2].filter((one) => one > 1).forEach((each) => expect(each).toBe(2));
});
