import { cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MadeLink, Receipt, StoredHour } from '@shedbook/routes';
import { sql } from 'kysely';
import { expect, it } from 'vitest';
import { keptSamplePath } from '../../../internal/testing/kept-samples.ts';
import { DAY, hoursOf, NOTES, newStudent, wrote } from '../test/dated.ts';
import { IN_A_FILE } from '../test/stores.ts';
import { hoursSuite } from '../test/suites/hours.suite.ts';
import { createLesson, send, startTestServer, temporaryFolder } from '../test/temporary.ts';
import { eraseAgain } from './store/erased.ts';
import { createHourStore } from './store/hours.ts';
import { openDatabase, STORE_FILE } from './store/open.ts';
import { createStudentStore } from './store/students.ts';
import { openTakeFiles } from './store/take-files.ts';
import { createTakeStore } from './store/takes.ts';

const LESSON = 'title: Slow twelve\nmeter: 12/8\nexercises:\n  - xxx x.x x.. ...\n';

hoursSuite(IN_A_FILE);

it('[SE3001] sets in a dated lesson what reaches the student, and no note with it', async () => {
  const server = await startTestServer();
  const { id, revision } = await newStudent(server);
  const { id: lesson } = await createLesson(server, LESSON);
  const set = {
    lesson,
    exercise: 'xxx x.x x.. ...',
    pinned: false,
    note: null,
    toBpm: 126,
    by: '2026-12-06',
  };
  const hour = `/api/students/${id}/hours/${DAY}`;
  await send(server, 'PUT', hour, wrote(0));
  const body = { assignments: [set], revision };
  expect(await send(server, 'PUT', `${hour}/set`, body)).toMatchObject({
    status: 200,
    body: {
      student: { assignments: [set], name: 'Bram', level: 'intermediate', revision: revision + 1 },
      hour: { day: DAY, done: 'Feathering, then exercise 3.', set: [set], revision: 2 },
    },
  });
  // from another revision of the student nothing is set, and nothing noted
  const stale = await send(server, 'PUT', `${hour}/set`, { assignments: [], revision });
  expect(stale).toMatchObject({ status: 409, body: { code: 'student-changed' } });
  expect((await hoursOf(server, id)).hours).toMatchObject([{ set: [set], revision: 2 }]);
  const link = (await send(server, 'POST', `/api/students/${id}/links?language=en`)).body as MadeLink;
  const page = new URL(link.address).pathname;
  const week = await send(server, 'GET', `${page}week.json`);
  expect(week.body).toMatchObject({ assignments: [set] });
  expect(JSON.stringify(week.body)).not.toContain('tense');
  const pack = await fetch(new URL(`/api/lessons/${lesson}/practice.zip?student=${id}`, server.url));
  expect(Buffer.from(await pack.arrayBuffer()).includes('tense')).toBe(false);
});

it('[SE3002] erases a dated lesson at once, on the disk too, and with its student', async () => {
  const dataDir = temporaryFolder();
  const server = await startTestServer({ dataDir });
  const { id } = await newStudent(server);
  const at = (day: string) => `/api/students/${id}/hours/${day}`;
  await send(server, 'PUT', at(DAY), wrote(0));
  expect((await send(server, 'DELETE', at(DAY))).status).toBe(204);
  expect((await send(server, 'DELETE', at(DAY))).status).toBe(404);
  expect(readFileSync(join(dataDir, STORE_FILE)).includes('Wrist is tense')).toBe(false);
  // what was erased may be written anew, and has its revisions anew
  await send(server, 'PUT', at(DAY), wrote(0));
  await send(server, 'PUT', at('2026-12-06'), wrote(0));
  const { body } = await send(server, 'DELETE', `/api/students/${id}/for-good`);
  expect((body as Receipt).hours).toBe(2);
  expect(readFileSync(join(dataDir, STORE_FILE)).includes('Wrist is tense')).toBe(false);
});

it('[SE3003] goes out with everything, and stays erased where a backup is restored', async () => {
  const dataDir = temporaryFolder();
  const server = await startTestServer({ dataDir });
  const { id } = await newStudent(server);
  await send(server, 'PUT', `/api/students/${id}/hours/${DAY}`, wrote(0));
  const all = (await send(server, 'GET', '/api/everything.json')).body;
  expect(all).toMatchObject({ students: [{ hours: [{ day: DAY, notes: NOTES } as Partial<StoredHour>] }] });
  await send(server, 'DELETE', `/api/students/${id}/hours/${DAY}`);
  const database = openDatabase(dataDir);
  // what restoring does after it has laid down an older store
  await sql`insert into hours values (${id}, ${DAY}, '{}', '', 1, '')`.execute(database);
  await database.destroy();
  const { default: SQLite } = await import('libsql');
  const raw = new SQLite(join(dataDir, STORE_FILE));
  expect(eraseAgain(raw)).toBe(1);
  raw.close();
});

it('[SE42] keeps answers and what was set in a store from before there were dated lessons', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-12.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  const [kaito] = (await createStudentStore(database, () => new Date()).page({ find: 'kaito' })).students;
  const student = kaito?.id ?? '';
  const [take] = await createTakeStore(database, openTakeFiles(folder), () => new Date()).of(student);
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  expect(take).toMatchObject({
    answer: 'Let the last triplet fall later.',
    marks: [{ bar: 1, text: 'Lighter here.' }],
    notes: [{ bar: null, spokenAt: '2026-11-29T12:00:00.000Z' }],
  });
  expect(await createHourStore(database, () => new Date()).of(student)).toEqual({ hours: [], damaged: [] });
  await database.destroy();
});
