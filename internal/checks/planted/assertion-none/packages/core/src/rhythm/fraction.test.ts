import { expect, it } from 'vitest';

it('[AA1] runs', () => {
  Math.max(1, 2);
});
