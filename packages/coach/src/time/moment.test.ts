import { expect, it } from 'vitest';
import { formatDay, momentOf, readMoment } from './moment.ts';

it("[CH21] a moment tells the instant and the student's own day", () => {
  const evening = momentOf('2026-11-25T23:30:00-08:00');
  // standard: ISO 8601: 23:30 at -08:00 is 07:30 UTC of the next day
  expect(evening.instantSeconds).toBe(Date.UTC(2026, 10, 26, 7, 30) / 1000);
  expect(formatDay(evening.day)).toBe('2026-11-25');
  expect(momentOf('1970-01-01T00:00:00Z')).toEqual({ instantSeconds: 0, wallSeconds: 0, day: 0 });
});

it('[CH21] what is not a moment is refused', () => {
  const wrong = ['', '2026-11-25', '2026-11-25T18:30:00', '2026-02-30T00:00:00Z', '2026-13-01T00:00:00Z'];
  wrong.push(
    '2026-11-25T25:00:00Z',
    '2026-11-25T18:30:00+99:99',
    '25.11.2026 18:30',
    '2026-11-25T18:30:00 Z',
  );
  for (const text of wrong) expect(readMoment(text)).toBeNull();
  expect(() => momentOf('now')).toThrow('Internal error: "now" is not a moment');
});
