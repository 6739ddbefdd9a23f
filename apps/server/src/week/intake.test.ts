import { expect, it } from 'vitest';
import { IN_A_FILE } from '../../test/stores.ts';
import { intakeSuite } from '../../test/suites/intake.suite.ts';
import { countIntake } from './intake.ts';

const HOUR_MS = 3_600_000;

intakeSuite(IN_A_FILE);

it('[SE5001] takes a week without a network at once, and of a flood a day’s worth a day', () => {
  let now = 0;
  const intake = countIntake(() => now);
  const send = (student: string, rows: number, bytes: number, share = 1) => {
    const waitSeconds = intake.waitSeconds(student, { rows, bytes });
    if (waitSeconds === 0) intake.came(student, { rows, bytes }, share);
    return waitSeconds;
  };
  // definition: ten thousand rows of 600 bytes, as many at once as the page sends
  for (let n = 0; n < 20; n += 1) expect(send('honest', 500, 300_000)).toBe(0);
  const flood = (rows: number, bytes: number) => {
    let taken = 0;
    while (send('flood', rows, bytes) === 0) taken += 1;
    return taken;
  };
  expect(flood(10_000, 1000)).toBe(5);
  // definition: a fifth of a day for a fifth of what comes in a day
  expect(send('flood', 10_000, 1000)).toBe((24 * 3600) / 5);
  now += 24 * HOUR_MS;
  expect(flood(1, 8_000_000)).toBe(6);
  now += 12 * HOUR_MS;
  expect(flood(1, 8_000_000)).toBe(3);
  expect(send('honest', 500, 300_000)).toBe(0);
  // what is known already, since an answer got lost: ten times as much of it as of what is new
  expect(Array.from({ length: 41 }, () => send('again', 10_000, 1000, 0)).every((wait) => wait === 0)).toBe(
    true,
  );
  expect(send('again', 10_000, 1000, 0)).toBeGreaterThan(0);
});
