import { fork } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, openSync, readdirSync, readFileSync, statSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sql } from 'kysely';
import SQLite from 'libsql';
import { describe, expect, it } from 'vitest';
import { keptSamplePath } from '../../../../internal/testing/kept-samples.ts';
import { send, startTestServer, temporaryFolder } from '../../test/temporary.ts';
import { isFull } from './damaged.ts';
import { createLessonStore } from './lessons.ts';
import { copyName, openDatabase, STORE_FILE, STORE_VERSION, storeVersion } from './open.ts';
import { createStudentStore } from './students.ts';

const clock = () => new Date('2026-11-25T10:00:00Z');
const OPENER = fileURLToPath(new URL('../../test/open-store.mjs', import.meta.url));

/** Everything that lies in a folder, as one text. */
function bytesIn(folder: string): string {
  return readdirSync(folder)
    .map((name) => readFileSync(join(folder, name), 'latin1'))
    .join('');
}

it('[SE46] leaves no name and no practice of who was erased, in any file of the store', async () => {
  const dataDir = temporaryFolder();
  cpSync(keptSamplePath('store-3.sqlite'), join(dataDir, STORE_FILE));
  const server = await startTestServer({ dataDir });
  expect(readdirSync(dataDir)).toContain(copyName(3));
  const { body } = await send(server, 'POST', '/api/students', { name: 'Zebulon Quack' });
  const { id } = body as { readonly id: string };
  const long = JSON.stringify({ id: 'phone 1', form: 'quackquack '.repeat(5000) });
  await send(server, 'POST', `/api/students/${id}/log`, { version: 1, rows: [long] });
  expect(bytesIn(dataDir)).toContain('Zebulon');
  expect(bytesIn(dataDir)).toContain('quackquack');
  expect((await send(server, 'DELETE', `/api/students/${id}/for-good`)).status).toBe(200);
  expect((await send(server, 'DELETE', `/api/students/${id}/for-good`)).status).toBe(404);
  expect(bytesIn(dataDir)).not.toContain('Zebulon');
  expect(bytesIn(dataDir)).not.toContain('quackquack');
  expect(readdirSync(dataDir)).not.toContain(copyName(3));
  const lesson = await send(server, 'POST', '/api/lessons', { text: 'title: Wobblegong\n' });
  const { id: lessonId } = lesson.body as { readonly id: string };
  await send(server, 'PUT', `/api/lessons/${lessonId}`, { text: 'title: b', revision: 1, cause: 'edit' });
  await send(server, 'DELETE', `/api/lessons/${lessonId}/for-good`);
  expect(bytesIn(dataDir)).not.toContain('Wobblegong');
});

it('[SE50] files of the store are their owner’s alone', async () => {
  const dataDir = join(temporaryFolder(), 'lessons');
  const server = await startTestServer({ dataDir });
  await send(server, 'POST', '/api/lessons', { text: 'title: a' });
  // standard: POSIX: the last six bits are what group and others may do
  for (const name of ['.', ...readdirSync(dataDir)])
    expect((statSync(join(dataDir, name)).mode & 0o077).toString(8), name).toBe('0');
});

it('[SE4000] says that the disk is full, loses nothing, and goes on once there is room', async () => {
  const database = openDatabase(temporaryFolder());
  const store = createLessonStore(database, clock);
  const { id } = await store.create('title: a');
  // SQLite documentation, PRAGMA max_page_count: a file that may not grow is full as a disk is
  await sql`pragma max_page_count = 1`.execute(database);
  const save = (text: string) => store.save(id, { text, revision: 1, cause: 'edit' });
  expect(isFull(await save('title: b\n'.repeat(100_000)).catch((error: unknown) => error))).toBe(true);
  expect((await store.read(id))?.text).toBe('title: a');
  await sql`pragma max_page_count = 1000000`.execute(database);
  expect((await save('title: c')).kind).toBe('saved');
  await store.close();
});

describe('bringing a store up to date', () => {
  it('[SE48] keeps a copy of what was there before', async () => {
    const folder = temporaryFolder();
    cpSync(keptSamplePath('store-3.sqlite'), join(folder, STORE_FILE));
    await openDatabase(folder).destroy();
    const copy = new SQLite(join(folder, copyName(3)), { readonly: true });
    expect(storeVersion(copy)).toBe(3);
    // definition: the sample itself, internal/fixtures/versions/SOURCE.md
    expect(copy.prepare('select count(*) as n from students where log <> ?').get('')).toMatchObject({ n: 3 });
    copy.close();
    const fresh = temporaryFolder();
    await openDatabase(fresh).destroy();
    expect(readdirSync(fresh).filter((name) => name.includes('before'))).toEqual([]);
  });

  it.each([
    ['a new store', null],
    ['an old one', 'store-3.sqlite'],
  ] as const)(
    '[SE48] four programs that start at once bring %s up to date once',
    async (_, sample) => {
      const folder = temporaryFolder();
      if (sample) cpSync(keptSamplePath(sample), join(folder, STORE_FILE));
      const children = Array.from({ length: 4 }, () =>
        fork(OPENER, [folder], { stdio: 'inherit', execArgv: [] }),
      );
      await Promise.all(children.map((child) => once(child, 'message')));
      for (const child of children) child.send('go');
      const ended = await Promise.all(children.map((child) => once(child, 'exit')));
      expect(ended.map(([status]) => status)).toEqual([0, 0, 0, 0]);
      const database = openDatabase(folder);
      const lessons = await createLessonStore(database, clock).list();
      // definition: the sample has one lesson; each program made one
      expect(lessons).toHaveLength(sample ? 5 : 4);
      await database.destroy();
      const file = new SQLite(join(folder, STORE_FILE));
      expect(storeVersion(file)).toBe(STORE_VERSION);
      file.close();
    },
    60_000,
  );
});

describe('a damaged store', () => {
  async function made(count: number) {
    const folder = temporaryFolder();
    const database = openDatabase(folder);
    const store = createLessonStore(database, clock);
    for (let n = 0; n < count; n += 1) await store.create(`title: Lesson ${n}\n# ${'tom '.repeat(900)}\n`);
    const student = await createStudentStore(database, clock).create('Bram');
    await createStudentStore(database, clock).takeIn(student.id, { version: 1, rows: ['{"id":"phone 77"}'] });
    await sql.raw('pragma wal_checkpoint(truncate)').execute(database);
    await database.destroy();
    return join(folder, STORE_FILE);
  }

  function overwrite(file: string, at: number, bytes: Uint8Array): void {
    const handle = openSync(file, 'r+');
    writeSync(handle, bytes, 0, bytes.length, at);
  }

  it('[SE49] serves what can be read around a broken page, and names the rest', async () => {
    const file = await made(30);
    const content = readFileSync(file, 'latin1');
    const pageBytes = 4096;
    // standard: SQLite file format, 1.6: a page that begins with 0x0a is a leaf of an index, as a table without rowids
    // has it; ids are random, so which lessons stand in the page over the leaves differs each time
    const pages = Array.from({ length: 30 }, (_, n) =>
      Math.floor(content.indexOf(`title: Lesson ${n}\n`) / pageBytes),
    );
    const page = pages.find((each) => content.charCodeAt(each * pageBytes) === 0x0a) ?? Number.NaN;
    overwrite(file, page * pageBytes, new Uint8Array(pageBytes).fill(0xa5));
    const database = openDatabase(join(file, '..'));
    const store = createLessonStore(database, clock);
    const [lessons, damaged] = [await store.list(), await store.damaged()];
    // standard: SQLite file format, 1.6: a page of 4096 bytes holds the beginnings of eight texts at most, and may have
    // one more above it
    expect(lessons.length).toBeGreaterThanOrEqual(30 - 9);
    expect(lessons.length + damaged.length).toBe(30);
    expect(damaged.length).toBeGreaterThan(0);
    await expect(store.read(damaged[0]?.id ?? '')).rejects.toThrow();
    await database.destroy();
  });

  it('[SE49] shows a list whose summaries are damaged, since the texts are whole', async () => {
    const file = await made(3);
    const content = readFileSync(file, 'latin1');
    const start = '{"version":1,"title":"Lesson 1"';
    const other = '{"version":1,"title":"Lesson 2"';
    const [at, altered] = [content.indexOf(start), content.indexOf(other)];
    expect(Math.min(at, altered)).toBeGreaterThan(0);
    overwrite(file, at, new Uint8Array(start.length).fill(0x23));
    // One that can be read, and says something else.
    overwrite(
      file,
      altered,
      Uint8Array.from(other.replace('2"', '7"'), (sign) => sign.charCodeAt(0)),
    );
    const database = openDatabase(join(file, '..'));
    const shelf = await createLessonStore(database, clock).shelf();
    const titles = shelf.map(({ summary }) => summary.title);
    expect(titles.toSorted()).toEqual(['Lesson 0', 'Lesson 1', 'Lesson 2']);
    await database.destroy();
  });

  it('[SE49] does not serve a text whose bits have flipped', async () => {
    const file = await made(3);
    const content = readFileSync(file, 'latin1');
    const bytes = (text: string) => Uint8Array.from(text, (sign) => sign.charCodeAt(0));
    overwrite(file, content.indexOf('title: Lesson 1\n'), bytes('title: Lesson 7'));
    overwrite(file, content.indexOf('{"id":"phone 77"}'), bytes('{"id":"phone 78"}'));
    const database = openDatabase(join(file, '..'));
    const store = createLessonStore(database, clock);
    expect((await store.list()).map(({ text }) => text.slice(0, 15)).toSorted()).toEqual([
      'title: Lesson 0',
      'title: Lesson 2',
    ]);
    // it is named as it was summed up when it was written
    expect(await store.damaged()).toEqual([{ id: expect.any(String), title: 'Lesson 1' }]);
    const students = createStudentStore(database, clock);
    const [bram] = await students.list();
    const rows = (await students.readLog(bram?.id ?? '', 0))?.rows;
    expect(rows).toMatchObject([{ text: '{"id":"phone 78"}', isSound: false }]);
    await database.destroy();
  });

  it('[SE49] says in words that a file is no store, and leaves it alone', async () => {
    const folder = temporaryFolder();
    const file = openSync(join(folder, STORE_FILE), 'w');
    writeSync(file, 'no database, however long it may be. '.repeat(100));
    expect(() => openDatabase(folder)).toThrow(/damaged.*shedbook doctor/s);
    expect(readFileSync(join(folder, STORE_FILE), 'utf8')).toMatch(/^no database/);
    expect(existsSync(join(folder, 'lessons.before-1.sqlite'))).toBe(false);
  });
});
