import { expect, it } from 'vitest';
import { daySaid } from './day-said.ts';

it('[ST6003] a day of another year is said with its year, whether it is long ago or a clock was ahead', () => {
  const now = new Date('2026-11-30T12:00:00');
  // library: Unicode CLDR, as Intl has it
  expect(daySaid('2026-05-18T12:00:00', 'en', 'short', now)).toBe('May 18');
  expect(daySaid('2025-05-18T12:00:00', 'en', 'short', now)).toBe('May 18, 2025');
  expect(daySaid('2029-05-18T12:00:00', 'de', 'long', now)).toBe('18. Mai 2029');
  expect(daySaid('2026-05-18T12:00:00', 'de', 'long', now)).toBe('18. Mai');
});
