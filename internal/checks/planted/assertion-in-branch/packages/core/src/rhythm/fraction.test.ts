import { expect, it } from 'vitest';

it('[AA1] runs', () => {
  const found = [1, 2].find((each) => each > 1);
  if (found) expect(found).toBe(2);
});
