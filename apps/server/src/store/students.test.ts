import { join } from 'node:path';
import type { StoredStudent } from '@shedbook/routes';
import SQLite from 'libsql';
import { expect, it } from 'vitest';
import { send, startTestServer, temporaryFolder } from '../../test/temporary.ts';
import { openDatabase, STORE_FILE } from './open.ts';
import { createStudentStore } from './students.ts';

const LOG = '{ "version": 1,\n  "entries": [], "removed": [] }\n';
const SET = [
  { lesson: 'first-swing', exercise: 'snare ..x x.. ... x.x', pinned: true, note: 'slowly' },
] as const;

it('[SE40] keeps a student letter for letter, and refuses a save from another revision', async () => {
  const server = await startTestServer();
  const { body } = await send(server, 'POST', '/api/students', { name: 'Kaito' });
  const made = body as StoredStudent;
  expect(made).toMatchObject({ name: 'Kaito', log: '', assignments: [], level: 'intermediate', revision: 1 });
  const path = `/api/students/${made.id}`;
  const saved = await send(server, 'PUT', path, { name: 'Kaito', log: LOG, assignments: SET, revision: 1 });
  expect(saved).toMatchObject({ status: 200, body: { log: LOG, assignments: SET, revision: 2 } });
  const stale = await send(server, 'PUT', path, { name: 'K', log: '', assignments: [], revision: 1 });
  expect(stale).toMatchObject({
    status: 409,
    body: { code: 'student-changed', values: { kept: { log: LOG, revision: 2 } } },
  });
  const stricter = { name: 'Kaito', log: LOG, assignments: SET, level: 'advanced', revision: 2 };
  expect(await send(server, 'PUT', path, stricter)).toMatchObject({ body: { level: 'advanced' } });
  // a page from before students had a level sends none
  const { level: _, ...before } = { ...stricter, revision: 3 };
  expect(await send(server, 'PUT', path, before)).toMatchObject({ body: { level: 'advanced' } });
  expect((await send(server, 'GET', '/api/students')).body).toMatchObject([{ name: 'Kaito', log: LOG }]);
  for (const wrong of [{ name: '' }, {}]) {
    expect((await send(server, 'POST', '/api/students', wrong)).status).toBe(400);
  }
  const nobody = { name: 'x', log: '', assignments: [], revision: 1 };
  expect((await send(server, 'PUT', '/api/students/nobody', nobody)).status).toBe(404);
});

it('[SE41] takes a student off the roster, brings them back whole, and forgets them in the end', async () => {
  const database = openDatabase(temporaryFolder());
  let now = new Date('2026-11-25T10:00:00Z');
  const store = createStudentStore(database, () => now);
  const { id } = await store.create('Sunniva');
  await store.save(id, { name: 'Sunniva', log: LOG, assignments: SET, revision: 1 });
  expect([await store.remove(id), await store.remove(id), await store.list()]).toEqual([true, false, []]);
  expect(await store.restore(id)).toMatchObject({ name: 'Sunniva', log: LOG, assignments: SET });
  await store.remove(id);
  now = new Date('2026-11-26T10:00:00Z');
  await store.forgetRemovedBefore(new Date('2026-11-25T09:00:00Z'));
  expect(await store.restore(id)).not.toBeNull();
  await store.remove(id);
  await store.forgetRemovedBefore(new Date('2026-11-27T10:00:00Z'));
  expect(await store.restore(id)).toBeNull();
  await database.destroy();
});

it('[SE42] brings a store from before there were students up to date', async () => {
  const folder = temporaryFolder();
  await openDatabase(folder).destroy();
  const file = new SQLite(join(folder, STORE_FILE));
  file.exec(`drop table students;
    insert into lessons values ('a', 1, 0, 0, 'then', 'then', null);
    insert into steps values ('a', 0, 'title: Kept');
    pragma user_version = 1;`);
  file.close();
  const database = openDatabase(folder);
  expect(await database.selectFrom('steps').select('text').execute()).toEqual([{ text: 'title: Kept' }]);
  const store = createStudentStore(database, () => new Date());
  await store.create('Bram');
  await store.create('Ifeoma');
  expect((await store.list()).map((each) => each.name).toSorted()).toEqual(['Bram', 'Ifeoma']);
  await database.destroy();
});
