import { cpSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'libsql';
import { expect, it } from 'vitest';
import { keptSamplePath } from '../../../../internal/testing/kept-samples.ts';
import { IN_A_FILE } from '../../test/stores.ts';
import { studentsSuite } from '../../test/suites/students.suite.ts';
import { temporaryFolder } from '../../test/temporary.ts';
import { openDatabase, STORE_FILE } from './open.ts';
import { createStudentStore } from './students.ts';

studentsSuite(IN_A_FILE);

it('[SE42] brings a store from before there were students up to date', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-1.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  const store = createStudentStore(database, () => new Date());
  await store.create('Bram');
  await store.create('Ifeoma');
  expect((await store.list()).map((each) => each.name).toSorted()).toEqual(['Bram', 'Ifeoma']);
  await database.destroy();
});

it('[SE42] takes logs apart into rows and loses nothing of those that cannot be read', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-3.sqlite'), join(folder, STORE_FILE));
  const before = new SQLite(join(folder, STORE_FILE));
  const logs = before.prepare('select name, log from students order by name').all() as readonly {
    readonly name: string;
    readonly log: string;
  }[];
  before.close();
  const database = openDatabase(folder);
  const store = createStudentStore(database, () => new Date());
  const rowsOf = async (name: string) => {
    const id = (await store.list()).find((each) => each.name === name)?.id ?? '';
    const rows = (await store.readLog(id, 0))?.rows ?? [];
    expect(rows.every(({ isSound }) => isSound)).toBe(true);
    return rows.map(({ version, text }) => [version, text]);
  };
  const entriesOf = (name: string): readonly object[] =>
    JSON.parse(logs.find((each) => each.name === name)?.log ?? '').entries;
  // definition: the logs themselves, internal/fixtures/versions/SOURCE.md
  expect(await rowsOf('Bram')).toEqual([
    ...entriesOf('Bram').map((entry) => [1, JSON.stringify(entry)]),
    [1, '{"removed":"phone 9"}'],
  ]);
  expect(await rowsOf('Ifeoma')).toEqual(entriesOf('Ifeoma').map((entry) => [2, JSON.stringify(entry)]));
  expect(await rowsOf('Kaito')).toEqual([[0, '{ "version": 1, "entries": [ half']]);
  expect(await rowsOf('Sunniva')).toEqual([]);
  await database.destroy();
});
