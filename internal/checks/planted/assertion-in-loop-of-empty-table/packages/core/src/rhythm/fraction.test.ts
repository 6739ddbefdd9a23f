import { expect, it } from 'vitest';
import { ROWS } from './table.data.ts';

it('[AA1] runs', () => {
  for (const each of ROWS) expect(each).toBe(2);
});
