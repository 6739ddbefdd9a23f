import { loudnessDb } from '@shedbook/sound';
import { expect, it } from 'vitest';

it('[BB1] hears a stroke', () => {
  expect(loudnessDb).toBe(2);
});
