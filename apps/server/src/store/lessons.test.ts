import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sql } from 'kysely';
import SQLite from 'libsql';
import { expect, it, onTestFinished } from 'vitest';
import { keptSamplePath } from '../../../../internal/testing/kept-samples.ts';
import { IN_A_FILE } from '../../test/stores.ts';
import { lessonsSuite } from '../../test/suites/lessons.suite.ts';
import { temporaryFolder } from '../../test/temporary.ts';
import { createLessonStore } from './lessons.ts';
import { createLinkStore } from './links.ts';
import { openDatabase, STORE_FILE, storeVersion } from './open.ts';
import { createStudentStore } from './students.ts';
import { openTakeFiles } from './take-files.ts';
import { createTakeStore } from './takes.ts';

const KILLED_STORE = fileURLToPath(new URL('../../../../internal/fixtures/killed-store', import.meta.url));

const LONG_AGO = new Date('2031-03-01T09:00:00Z');

const KAITO = {
  name: 'Kaito',
  rows: 2,
  lastPlayedAt: '2026-11-26T18:30:00+01:00',
  minority: { isMinor: true, consent: { by: 'Oda Lindqvist-Reyes' } },
};

lessonsSuite(IN_A_FILE);

it('[SE8] writes ahead and syncs at every commit', async () => {
  const database = openDatabase(temporaryFolder());
  onTestFinished(() => database.destroy());
  const pragma = async (name: string) => (await sql.raw(`pragma ${name}`).execute(database)).rows[0];
  // standard: SQLite documentation, PRAGMA synchronous: 2 is FULL
  expect(await pragma('synchronous')).toEqual({ synchronous: 2 });
  expect(await pragma('journal_mode')).toEqual({ journal_mode: 'wal' });
});

it('[SE9] refuses a store of a newer version and leaves it alone', () => {
  const folder = temporaryFolder();
  const file = new SQLite(join(folder, STORE_FILE));
  file.pragma('user_version = 99');
  expect(() => openDatabase(folder)).toThrow(/newer Shedbook \(store version 99/);
  expect(storeVersion(file)).toBe(99);
  file.close();
});

it('[SE42] brings a store of every version that there was up to date, and keeps what is in it', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-1.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  const store = createLessonStore(database, () => LONG_AGO);
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  const [kept] = await store.list();
  expect(kept).toMatchObject({ id: 'first-swing', revision: 2, step: 1, lastStep: 1 });
  expect(kept?.text).toContain('tempo: 90');
  expect((await store.readStep('first-swing', 0))?.text).toContain('tempo: 80');
  expect(await createStudentStore(database, () => LONG_AGO).list()).toEqual([]);
  await store.close();
  const file = new SQLite(join(folder, STORE_FILE));
  // every version before this one has a sample: store-1.sqlite, version 2 in the killed store, store-3.sqlite, store-4.sqlite, store-5.sqlite, store-6.sqlite, store-7.sqlite, store-8.sqlite, store-9.sqlite, store-10.sqlite, store-11.sqlite, store-12.sqlite, store-13.sqlite, store-14.sqlite, store-15.sqlite, store-16.sqlite, store-17.sqlite, store-18.sqlite, store-19.sqlite
  expect(storeVersion(file)).toBe(20);
  file.close();
});

it('[SE42] finds the lessons of a store from before there were shelves on none', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-4.sqlite'), join(folder, STORE_FILE));
  const store = createLessonStore(openDatabase(folder), () => LONG_AGO);
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  const [first, ...others] = await store.shelf();
  expect(others).toEqual([]);
  expect(first?.summary).toMatchObject({ title: 'First swing', revision: 2, level: null, shelves: [] });
  expect((await store.read(first?.summary.id ?? ''))?.text).toContain('tempo: 90');
  await store.close();
});

it('[SE42] finds the practice of a store from before there were private links', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-6.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  const [kaito, ...others] = await createStudentStore(database, () => LONG_AGO).list();
  expect(others).toEqual([]);
  expect(kaito).toMatchObject({ name: 'Kaito', rows: 1 });
  expect(await createLinkStore(database, () => LONG_AGO).list(kaito?.id ?? '')).toEqual([]);
  await database.destroy();
});

it('[SE42] finds the private links of a store from before there were takes', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-7.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  const [kaito] = await createStudentStore(database, () => LONG_AGO).list();
  expect(kaito).toMatchObject({ name: 'Kaito', rows: 2 });
  expect(await createLinkStore(database, () => LONG_AGO).list(kaito?.id ?? '')).toHaveLength(1);
  expect(await createTakeStore(database, openTakeFiles(folder), () => LONG_AGO).unheard()).toEqual({
    takes: [],
    takesOf: 0,
  });
  await database.destroy();
});

it('[SE42] finds the takes of a store from before it was noted what was erased', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-8.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  const [kaito] = await createStudentStore(database, () => LONG_AGO).list();
  const takes = createTakeStore(database, openTakeFiles(folder), () => LONG_AGO);
  expect(await takes.of(kaito?.id ?? '')).toMatchObject([
    { facts: { id: 'phone 1' }, isHeard: true, answer: 'Let the last triplet fall later.' },
  ]);
  await database.destroy();
});

it('[SE42] calls nobody a minor of a store from before that was noted, and keeps what was erased', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-9.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  const students = await createStudentStore(database, () => LONG_AGO).list();
  expect(students).toMatchObject([{ name: 'Kaito', minority: { isMinor: false, consent: null } }]);
  expect(await database.selectFrom('erased').select('kind').execute()).toEqual([{ kind: 'student' }]);
  await database.destroy();
});

it('[SE42] finds students of a store from before they were looked for by name', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-10.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  const students = createStudentStore(database, () => LONG_AGO);
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  expect(await students.page({ find: '' })).toMatchObject({
    students: [KAITO, { rows: 0 }],
    of: 2,
    next: null,
  });
  expect(await students.page({ find: 'KAI' })).toMatchObject({ students: [KAITO], of: 1 });
  await database.destroy();
});

it('[SE42] keeps the answers of a store from before bars were marked', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-11.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  const [kaito] = (await createStudentStore(database, () => LONG_AGO).page({ find: 'kaito' })).students;
  const takes = createTakeStore(database, openTakeFiles(folder), () => LONG_AGO);
  expect(await takes.of(kaito?.id ?? '')).toMatchObject([
    { answer: 'Let the last triplet fall later.', marks: [], notes: [] },
  ]);
  await database.destroy();
});

it('[SE43] opens what a killed program left, written through another SQLite library', async () => {
  const folder = temporaryFolder();
  cpSync(KILLED_STORE, folder, { recursive: true });
  const database = openDatabase(folder);
  const store = createLessonStore(database, () => LONG_AGO);
  // definition: what was sent to the server that wrote it, internal/fixtures/killed-store/SOURCE.md
  const [kept, ...others] = await store.list();
  expect(others).toEqual([]);
  expect(kept).toMatchObject({
    revision: 4,
    step: 1,
    lastStep: 2,
    text: expect.stringContaining('tempo: 90'),
  });
  const history = [0, 1, 2].map((step) => store.readStep(kept?.id ?? '', step));
  const tempi = (await Promise.all(history)).map((each) => /tempo: (\d+)/.exec(each?.text ?? '')?.[1]);
  expect(tempi).toEqual(['80', '90', '100']);
  const [bram] = await createStudentStore(database, () => LONG_AGO).list();
  expect(bram).toMatchObject({ name: 'Bram', assignments: [{ lesson: 'first-swing', note: 'slowly' }] });
  await store.close();
});
