import '../../../../scripts/run.mjs';
import { expect, it } from 'vitest';

it('[AA1] holds', () => {
  expect(1).toBe(1);
});
