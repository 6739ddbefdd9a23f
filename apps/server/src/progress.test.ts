import { passEntry } from '@shedbook/coach';
import { Bpm, exerciseKey, type PracticeEntry, parseLesson, Seconds } from '@shedbook/core';
import type { StoredStudent } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { readPdf, readStructure, textOfPdf } from '../../../internal/testing/pdf.ts';
import { createLesson, send, sharedTestServer } from '../test/temporary.ts';

const server = sharedTestServer();

const SHEET =
  'title: Slow twelve\nmeter: 12/8\ntempo: {start: 90, goal: 150, step: 6}\nfeel: even\nexercises:\n  - xxx x.x x.. ...\n  - x.. xxx ... x.x\n  - ... x.x xxx x..\n';
const KEYS = (parseLesson(SHEET, 'lesson').lesson?.exercises ?? []).map(exerciseKey);
const NOW = '2026-11-29T18:00:00+01:00';

/** Played on two days of one week for 20 minutes each, and once in the week before last; the first exercise passed. */
async function aStudent(): Promise<StoredStudent> {
  const student = (await send(server(), 'POST', '/api/students', { name: 'Søren' })).body as StoredStudent;
  const { id } = student;
  const { id: lesson } = await createLesson(server(), SHEET);
  const clean = { bpm: Bpm(105), verdict: 'clean', faults: [] } as const;
  const played = (day: string): PracticeEntry => ({
    ...{ id: `phone ${day}`, device: 'phone', startedAt: `${day}T19:00:00+01:00`, lesson },
    ...{ exercise: KEYS[1] ?? '', durationSeconds: Seconds(1200), form: 'loop', heardBy: 'ear' },
    loops: [clean, clean, clean, clean],
  });
  const pass = passEntry({
    ...{ id: 'teacher 1', startedAt: '2026-11-24T10:00:00+01:00', lesson },
    ...{ exercise: KEYS[0] ?? '', bpm: Bpm(120) },
  });
  const entries = [played('2026-11-12'), played('2026-11-25'), played('2026-11-27'), pass];
  await send(server(), 'POST', `/api/students/${id}/log`, {
    version: 1,
    rows: entries.map((each) => JSON.stringify(each)),
  });
  const assignments = [
    { lesson, exercise: KEYS[1], pinned: false, note: 'Let the ride breathe.', toBpm: 120, by: '2026-12-06' },
  ];
  await send(server(), 'PUT', `/api/students/${id}/hours/2026-11-29`, {
    ...{ attendance: 'came', done: 'Feathering.', notes: 'Wrist is tense.', revision: 0 },
  });
  await send(server(), 'PUT', `/api/students/${id}`, { name: 'Søren', assignments, revision: 1 });
  return student;
}

async function pageOf({ id }: Pick<StoredStudent, 'id'>, query = ''): Promise<Response> {
  const address = `/api/students/${id}/progress.pdf?now=${encodeURIComponent(NOW)}${query}`;
  return fetch(new URL(address, server().url));
}

it('[SE3004] prints what was practised, passed and set, and what comes next, as a tagged page in either language', async () => {
  const student = await aStudent();
  const response = await pageOf(student);
  expect(response.headers.get('content-type')).toBe('application/pdf');
  const bytes = new Uint8Array(await response.arrayBuffer());
  const text = (await textOfPdf(bytes)).replaceAll(/\s+/g, ' ');
  // definition: 12/8 is counted in dotted quarters, so 105, 120 and 150 quarters a minute are 70, 80 and 100
  for (const said of [
    'Søren: how practice is going',
    'November 2, 2026 to November 29, 2026: practised on 3 days, 60 minutes in all.',
    'November 9 to November 15 1 day, 20 min',
    'November 16 to November 22 nothing played',
    'November 23 to November 29 2 days, 40 min',
    'Slow twelve 1 at 80 beats a minute, November 24',
    'Slow twelve 2 up to 80 beats a minute, for December 6',
    'Clean at 70 so far. Let the ride breathe.',
    'Slow twelve 3',
  ])
    expect(text).toContain(said);
  // what is the teacher's own is not for parents
  expect(text).not.toMatch(/tense|Feathering/);
  const { pages } = await readPdf(bytes);
  // standard: ISO 216: A4 is 210 mm by 297 mm
  expect(pages).toHaveLength(1);
  const structure = await readStructure(bytes);
  expect(structure).toMatchObject({ isMarked: true, language: 'en' });
  expect(JSON.stringify(structure.pages)).toMatch(/"H1".*"H2"/);
  const german = await pageOf(student, '&language=de&weeks=1&paper=Letter');
  const germanText = (await textOfPdf(new Uint8Array(await german.arrayBuffer()))).replaceAll(/\s+/g, ' ');
  expect(germanText).toContain(
    '23. November 2026 bis 29. November 2026: an 2 Tagen geübt, zusammen 40 Minuten.',
  );
  expect(germanText).toContain('Bisher sauber bei 70.');
});

it('[SE3004] prints a page for whoever has played nothing, and none for nobody', async () => {
  const { body } = await send(server(), 'POST', '/api/students', { name: 'Nobody yet' });
  const bytes = new Uint8Array(await (await pageOf(body as StoredStudent)).arrayBuffer());
  expect(await textOfPdf(bytes)).toContain('Nothing is set.');
  expect((await pageOf({ id: 'nobody' })).status).toBe(404);
  expect((await pageOf(body as StoredStudent, '&weeks=0')).status).toBe(400);
});
