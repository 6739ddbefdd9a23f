import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { keptSamplePath } from '../../../internal/testing/kept-samples.ts';
import { IN_A_FILE } from '../test/stores.ts';
import { teachersSuite } from '../test/suites/teachers.suite.ts';
import { send, startTestServer, temporaryFolder } from '../test/temporary.ts';
import { setPassphrase } from './start.ts';
import { openDatabase, STORE_FILE } from './store/open.ts';
import { createSignInStore } from './store/sign-in.ts';
import { createTeacherStore } from './store/teachers.ts';
import { inviteTeacher, listTeachers } from './teachers-by-command.ts';

teachersSuite(IN_A_FILE);

it('[SE42] gives everything in a store from before there were several teachers to the first, who keeps the passphrase', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-19.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  const clock = () => new Date('2026-11-30T10:30:00Z');
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  const signIn = createSignInStore(database, clock);
  expect(await signIn.signIn('brushes on a coated head')).not.toBeNull();
  expect(await createTeacherStore(database, clock).list()).toMatchObject([
    { name: '', role: 'head', students: 2, hasJoined: true },
  ]);
  for (const table of ['students', 'lessons', 'books'] as const) {
    const rows = await database.selectFrom(table).select('teacher_id').execute();
    expect(new Set(rows.map(({ teacher_id }) => teacher_id)), table).toEqual(new Set(['first']));
  }
  await database.destroy();
});

it('[SE7400] a teacher who is alone meets none of it: nobody signs in on this computer, and no route speaks of a school', async () => {
  const server = await startTestServer();
  expect((await send(server, 'GET', '/api/session')).body).toEqual({ state: 'open' });
  expect((await send(server, 'POST', '/api/teachers', { name: 'Ana' })).body).toMatchObject({
    code: 'no-passphrase',
  });
});

it('[SE7404] lets nobody in by a letter before the desk has a passphrase, and nobody without a name', async () => {
  const dataDir = temporaryFolder();
  await expect(inviteTeacher('Ana', { dataDir })).rejects.toThrow('set it with "shedbook passphrase"');
  await setPassphrase('brushes on a coated head', dataDir);
  for (const none of [' ', 'x'.repeat(81)])
    await expect(inviteTeacher(none, { dataDir })).rejects.toThrow('expected a name of 1 to 80 characters');
  const letters = [await inviteTeacher('Ana', { dataDir }), await inviteTeacher('ANA', { dataDir })];
  // definition: the desk of this computer, where nothing else is said
  for (const letter of letters) expect(letter).toMatch(/^http:\/\/127\.0\.0\.1:4747\/#invitation=[\w-]{43}$/);
  expect((await listTeachers({ dataDir })).map(({ name, hasJoined }) => [name, hasJoined])).toEqual([
    ['', true],
    ['Ana', false],
  ]);
});
