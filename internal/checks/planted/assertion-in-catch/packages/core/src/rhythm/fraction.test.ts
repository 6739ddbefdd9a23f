import { expect, it } from 'vitest';

it('[AA1] runs', () => {
  try {
    Math.max(1, 2);
  } catch (fault) {
    expect(String(fault)).toBe('no');
  }
});
