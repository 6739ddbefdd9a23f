import { cpSync, openSync, readdirSync, readFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { InputError } from '@shedbook/host';
import { sql } from 'kysely';
import { expect, it } from 'vitest';
import { keptSamplePath } from '../../../../internal/testing/kept-samples.ts';
import { temporaryFolder } from '../../test/temporary.ts';
import { startServer } from '../start.ts';
import { examineStore, saveReadable } from './examine.ts';
import { createLessonStore } from './lessons.ts';
import { openDatabase, STORE_FILE, STORE_VERSION } from './open.ts';
import { createStudentStore } from './students.ts';

const clock = () => new Date('2026-11-25T10:00:00Z');

async function made() {
  const folder = temporaryFolder();
  const database = openDatabase(folder);
  const store = createLessonStore(database, clock);
  const first = await store.create('title: First swing\ntempo: 80\n');
  await store.save(first.id, { text: 'title: First swing\ntempo: 97\n', revision: 1, cause: 'edit' });
  await store.create('title: Jazz waltz\n');
  await store.create('title: Jazz waltz\n');
  const students = createStudentStore(database, clock);
  const { id } = await students.create('Bram');
  await students.takeIn(id, { version: 1, rows: ['{"id":"phone 1"}', '{"id":"phone 77"}'] });
  await sql.raw('pragma wal_checkpoint(truncate)').execute(database);
  await database.destroy();
  return folder;
}

it('[SE52] finds nothing wrong with a store that is whole, old or not there, and leaves it alone', async () => {
  const folder = await made();
  const before = readFileSync(join(folder, STORE_FILE));
  expect(await examineStore(folder)).toMatchObject({
    ...{ version: STORE_VERSION, isSound: true, lessons: 3, students: 1, faults: [], damagedLessons: [] },
    damagedRows: 0,
  });
  expect(readFileSync(join(folder, STORE_FILE)).equals(before)).toBe(true);
  const old = temporaryFolder();
  cpSync(keptSamplePath('store-1.sqlite'), join(old, STORE_FILE));
  expect(await examineStore(old)).toMatchObject({ version: 1, isSound: true });
  const none = temporaryFolder();
  expect(await examineStore(join(none, 'nowhere'))).toMatchObject({ exists: false, isSound: true });
  expect(readdirSync(none)).toEqual([]);
});

it('[SE52] finds what is damaged and saves what can be read, of a damaged lesson an earlier text', async () => {
  const folder = await made();
  const file = join(folder, STORE_FILE);
  const content = readFileSync(file, 'latin1');
  const handle = openSync(file, 'r+');
  writeSync(handle, 'tempo: 79', content.indexOf('tempo: 97'));
  writeSync(handle, '{"id":"phone 78"}', content.indexOf('{"id":"phone 77"}'));
  const found = await examineStore(folder);
  expect(found).toMatchObject({ isSound: false, faults: [], lessons: 2, students: 1, damagedRows: 1 });
  expect(found.damagedLessons).toHaveLength(1);
  const out = join(temporaryFolder(), 'saved');
  expect(await saveReadable(folder, out)).toEqual({ lessons: 2, earlier: 1, students: 1 });
  const texts = readdirSync(out).map((name) => readFileSync(join(out, name), 'utf8'));
  expect(texts.filter((text) => text === 'title: Jazz waltz\n')).toHaveLength(2);
  expect(texts).toContain('title: First swing\ntempo: 80\n');
  const [student = ''] = readdirSync(out).filter((name) => name.endsWith('.student.json'));
  expect(JSON.parse(readFileSync(join(out, student), 'utf8'))).toMatchObject({
    student: { name: 'Bram' },
    rows: [{ id: 'phone 1' }],
  });
});

it('[SE52] says of a file that is no store that it is none', async () => {
  const folder = temporaryFolder();
  writeSync(openSync(join(folder, STORE_FILE), 'w'), 'no database at all, however long. '.repeat(200));
  const found = await examineStore(folder);
  expect([found.isSound, found.faults.length]).toEqual([false, 1]);
});

it('[SE5002] a folder that cannot be made is told in words, of the store and of what is saved', async () => {
  const folder = temporaryFolder();
  await createLessonStore(openDatabase(folder), clock).close();
  const inTheWay = join(folder, STORE_FILE, 'saved');
  // POSIX.1-2017, mkdir(): ENOTDIR; Linux makes no folders in /proc
  for (const none of [inTheWay, ...(process.platform === 'linux' ? ['/proc/shedbook/saved'] : [])]) {
    await expect(saveReadable(folder, none)).rejects.toThrow(`${none} cannot be written: `);
    await expect(startServer({ port: 0, dataDir: none })).rejects.toThrow(InputError);
  }
});
