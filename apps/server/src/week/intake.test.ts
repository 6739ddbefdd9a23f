import { expect, it, onTestFinished } from 'vitest';
import { temporaryFolder } from '../../test/temporary.ts';
import { weekHandlers } from '../http/week-handlers.ts';
import { createLessonStore } from '../store/lessons.ts';
import { openDatabase } from '../store/open.ts';
import { createStudentStore } from '../store/students.ts';
import { openTakeFiles } from '../store/take-files.ts';
import { createTakeStore } from '../store/takes.ts';
import { countIntake, PRACTICE_BYTES } from './intake.ts';

const HOUR_MS = 3_600_000;

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

it('[SE5001] refuses what is too much, says how long to wait, and has kept all that it acknowledged', async () => {
  const database = openDatabase(temporaryFolder());
  onTestFinished(() => database.destroy());
  const clock = () => new Date('2031-03-01T09:00:00Z');
  const store = createLessonStore(database, clock);
  const students = createStudentStore(database, clock);
  const takes = createTakeStore(database, openTakeFiles(temporaryFolder()), clock, clock);
  const student = await students.create('Kaito');
  const intake = countIntake(() => 0);
  const parts = {
    door: async () => ({ kind: 'open', student, language: 'en' }) as const,
    ...{ store, students, takes, intake },
  };
  const send = async (count: number, handlers = weekHandlers(parts)) => {
    const rows = Array.from({ length: count }, (_, n) => `{"id":"${count}","n":${n}}`);
    const asked = { params: { token: '' }, query: {}, body: { version: 1, rows } };
    return handlers.sendPractice(asked, new AbortController().signal, { ip: '', session: null });
  };
  expect(await send(100)).toMatchObject({ kind: 'answer', value: { added: 100 } });
  intake.came(student.id, { rows: 49_800, bytes: 0 }, 1);
  // definition: a hundred of fifty thousand rows are left for this day
  expect(await send(1100)).toEqual({
    kind: 'refused',
    refusal: { code: 'too-often', values: { waitSeconds: (24 * 3600) / 50 } },
  });
  expect(await send(99)).toMatchObject({ kind: 'answer', value: { added: 99 } });
  const kept = await students.rows(student.id);
  expect(kept).toHaveLength(199);
  expect(await students.practiceBytes(student.id)).toBe(kept.reduce((sum, { text }) => sum + text.length, 0));
  const full = weekHandlers({
    ...parts,
    students: { ...students, practiceBytes: async () => PRACTICE_BYTES },
  });
  expect(await send(1, full)).toEqual({
    kind: 'refused',
    refusal: { code: 'no-room', values: { mostBytes: PRACTICE_BYTES } },
  });
  expect(await students.rows(student.id)).toHaveLength(199);
});
