import '../../sound/src/index.ts';
import { expect, it } from 'vitest';

it('[BB1] holds', () => {
  expect(1).toBe(1);
});
