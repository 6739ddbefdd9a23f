import { readMoment } from '@shedbook/coach';
import { loadStudents } from '@shedbook/words';
import { expect, it } from 'vitest';
import { awayWords, daysAway } from './days-away.ts';

const TODAY = readMoment('2026-11-30T12:00:00Z')?.day ?? 0;

it('[ST6004] how long somebody has not played is said in whole days, and a clock that was ahead by name', async () => {
  const said = async (lastPlayedAt: string | null, language: 'en' | 'de' = 'en') =>
    awayWords((await loadStudents(language)).words.students, daysAway({ lastPlayedAt }, TODAY));
  expect(await said(null)).toBe('Nothing heard yet');
  expect(await said('2026-11-28T08:00:00+01:00')).toBe('played 2 days ago');
  // it is the first of December where the student lives
  expect(await said('2026-12-01T01:00:00+13:00')).toBe('played today');
  expect(await said('2029-05-18T08:00:00+01:00')).toBe('played while the clock of the device was ahead');
  expect(await said('2029-05-18T08:00:00+01:00', 'de')).toBe('gespielt, als die Uhr des Geräts vorging');
});
