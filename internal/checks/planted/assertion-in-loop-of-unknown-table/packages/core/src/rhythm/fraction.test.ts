import { expect, it } from 'vitest';

it('[AA1] runs', () => {
  for (const each of NOWHERE) expect(each).toBe(2);
});
