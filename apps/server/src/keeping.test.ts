import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { keptSamplePath } from '../../../internal/testing/kept-samples.ts';
import { IN_A_FILE } from '../test/stores.ts';
import { keepingSuite } from '../test/suites/keeping.suite.ts';
import { temporaryFolder } from '../test/temporary.ts';
import { openDatabase, STORE_FILE } from './store/open.ts';
import { createStudentStore } from './store/students.ts';
import { openTakeFiles } from './store/take-files.ts';
import { createTakeStore } from './store/takes.ts';

const NOW = new Date('2026-11-29T12:00:00Z');

keepingSuite(IN_A_FILE);

it('[SE42] keeps the lesson book of a store from before recordings grew old', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-13.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  const [hour] = await database.selectFrom('hours').selectAll().execute();
  expect(hour).toMatchObject({ held_on: '2026-11-29', content: expect.stringContaining('Feathering') });
  const [kaito] = (await createStudentStore(database, () => NOW).page({ find: 'kaito' })).students;
  expect(kaito?.coach).toEqual({ state: 'on', until: null });
  const takes = createTakeStore(database, openTakeFiles(folder), () => NOW);
  expect(await takes.of(kaito?.id ?? '')).toMatchObject([{ isKept: false, goesAt: null }]);
  await database.destroy();
});

it('[SE42] keeps the voice note of a store from before there were several, and when its student played last', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-15.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  const students = createStudentStore(database, () => NOW);
  const takes = createTakeStore(database, openTakeFiles(folder), () => NOW);
  const [kaito] = (await students.page({ find: 'kaito' })).students;
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  expect(await takes.of(kaito?.id ?? '')).toMatchObject([
    { notes: [{ bar: 2, spokenAt: '2026-11-29T12:00:00.000Z' }] },
  ]);
  const lastPlayedAt = kaito?.lastPlayedAt ?? '';
  const after = new Date(Date.parse(lastPlayedAt) + 1000);
  expect([await students.away(new Date(lastPlayedAt)), await students.away(after)]).toEqual([
    { away: [], awayOf: 0 },
    { away: [{ id: kaito?.id, name: 'Kaito', lastPlayedAt }], awayOf: 1 },
  ]);
  await database.destroy();
});

it('[SE42] has every student of a store from before they had a set-up stand as each lesson says', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-17.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  const { students } = await createStudentStore(database, () => NOW).page({ find: '' });
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  expect(students.map(({ name, setUp }) => [name, setUp])).toEqual([
    ['Kaito', null],
    ['Sunniva Østby', null],
  ]);
  await database.destroy();
});

it('[SE42] keeps the set-up of a student of a store from before there were books', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-18.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  const [kaito] = (await createStudentStore(database, () => NOW).page({ find: 'kaito' })).students;
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  expect(kaito?.setUp).toBe('left-handed');
  await database.destroy();
});

it('[SE42] keeps the voice note of a store from before notes were about a bar', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-14.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  const [kaito] = (await createStudentStore(database, () => NOW).page({ find: 'kaito' })).students;
  const takes = createTakeStore(database, openTakeFiles(folder), () => NOW);
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  expect(await takes.of(kaito?.id ?? '')).toMatchObject([
    { isKept: true, notes: [{ bar: null, spokenAt: '2026-11-29T12:00:00.000Z' }] },
  ]);
  await database.destroy();
});
