import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { TooMuchError } from '@shedbook/host';
import type { SaveCause, StoredLesson } from '@shedbook/routes';
import fc from 'fast-check';
import { sql } from 'kysely';
import SQLite from 'libsql';
import { describe, expect, it, onTestFinished } from 'vitest';
import { keptSamplePath } from '../../../../internal/testing/kept-samples.ts';
import { temporaryFolder } from '../../test/temporary.ts';
import { createLessonStore, type LessonStore } from './lessons.ts';
import { createLinkStore } from './links.ts';
import { openDatabase, STORE_FILE, storeVersion } from './open.ts';
import { createStudentStore } from './students.ts';
import { type Summary, type SumUp, summarise } from './summary.ts';
import { openTakeFiles } from './take-files.ts';
import { createTakeStore } from './takes.ts';

const KILLED_STORE = fileURLToPath(new URL('../../../../internal/fixtures/killed-store', import.meta.url));

const LONG_AGO = new Date('2031-03-01T09:00:00Z');

function openStore(folder = temporaryFolder(), clock = () => LONG_AGO): LessonStore {
  const store = createLessonStore(openDatabase(folder), clock);
  onTestFinished(() => store.close());
  return store;
}

async function saved(store: LessonStore, from: StoredLesson, text: string, cause: SaveCause = 'edit') {
  const outcome = await store.save(from.id, { text, revision: from.revision, cause });
  if (outcome.kind !== 'saved') throw new Error(`expected a save, got ${outcome.kind}`);
  return outcome.lesson;
}

describe('store of lessons', () => {
  it('[SE5000] goes on while a new lesson is read, and keeps nothing of one that takes too much', async () => {
    let finish: (summary: Summary) => void = () => undefined;
    let isTooMuch = false;
    const sumUp: SumUp = (text) =>
      isTooMuch
        ? Promise.reject(new TooMuchError())
        : new Promise((resolve) => {
            finish = () => resolve(summarise(text));
          });
    const database = openDatabase(temporaryFolder());
    const clock = () => LONG_AGO;
    const [store, quick] = [
      createLessonStore(database, clock, clock, sumUp),
      createLessonStore(database, clock),
    ];
    onTestFinished(() => store.close());
    const creating = store.create('title: Long');
    const short = await quick.create('title: Short');
    expect((await saved(quick, short, 'title: Shorter')).revision).toBe(2);
    finish(summarise(''));
    const long = await creating;
    isTooMuch = true;
    await expect(store.create('title: Endless')).rejects.toThrow(TooMuchError);
    const shelf = await store.shelf();
    // definition: one of the two was read as it is now; of the other its title is told
    expect(shelf.map(({ summary: { title, errors } }) => [title, errors]).toSorted()).toEqual([
      ['Long', 0],
      ['Shorter', 1],
    ]);
    expect((await quick.shelf()).map(({ summary }) => summary.errors)).toEqual([0, 0]);
    expect(await store.summary(long)).toMatchObject({ title: 'Long' });
  });

  it('[SE1] keeps the text letter for letter', async () => {
    const store = openStore();
    const text = '# Oda’s\ttabs & “quotes” \u{1F941}\r\ntitle: x\n\n\n';
    const lesson = await store.create(text);
    expect(lesson).toMatchObject({ text, revision: 1, step: 0, lastStep: 0 });
    expect(await store.read(lesson.id)).toEqual(lesson);
  });

  it('[SE2] raises the revision with every save', async () => {
    const store = openStore();
    const first = await store.create('a');
    const second = await saved(store, first, 'b');
    expect(second).toMatchObject({ text: 'b', revision: 2, step: 1, lastStep: 1 });
    expect(await store.read(first.id)).toEqual(second);
  });

  it('[SE3] refuses a stale save, gives what is kept and writes nothing', async () => {
    const store = openStore();
    const first = await store.create('a');
    const kept = await saved(store, first, 'b');
    const outcome = await store.save(first.id, { text: 'c', revision: 1, cause: 'edit' });
    expect(outcome).toEqual({ kind: 'conflict', kept });
    expect(await store.read(first.id)).toEqual(kept);
  });

  it('[SE4] walks back and forth over the whole history as a list of texts does', async () => {
    const move = fc.oneof(
      { weight: 3, arbitrary: fc.string({ maxLength: 8 }).map((text) => ({ cause: 'edit' as const, text })) },
      { weight: 2, arbitrary: fc.constant({ cause: 'undo' as const, text: '' }) },
      { weight: 2, arbitrary: fc.constant({ cause: 'redo' as const, text: '' }) },
    );
    const store = openStore();
    const property = fc.asyncProperty(fc.array(move, { maxLength: 24 }), async (moves) => {
      let lesson = await store.create('start');
      // definition: undo and redo over a list of texts and a place in it
      let texts = ['start'];
      let at = 0;
      for (const { cause, text } of moves) {
        if (cause === 'edit') {
          texts = [...texts.slice(0, at + 1), text];
          at += 1;
        } else {
          at = Math.min(texts.length - 1, Math.max(0, at + (cause === 'undo' ? -1 : 1)));
          if (at === lesson.step) continue;
        }
        const wanted = (await store.readStep(lesson.id, at))?.text ?? text;
        lesson = await saved(store, lesson, cause === 'edit' ? text : wanted, cause);
        expect([lesson.text, lesson.step, lesson.lastStep]).toEqual([texts[at], at, texts.length - 1]);
      }
    });
    await fc.assert(property, { numRuns: 30, seed: 5 });
  });

  it('[SE4] keeps three hundred steps', async () => {
    const store = openStore();
    let lesson = await store.create('0');
    for (let n = 1; n <= 300; n += 1) lesson = await saved(store, lesson, String(n));
    expect(await store.readStep(lesson.id, 0)).toEqual({ step: 0, text: '0' });
    expect(await store.readStep(lesson.id, 150)).toEqual({ step: 150, text: '150' });
    expect(await store.readStep(lesson.id, 301)).toBeNull();
  });

  it('[SE5] removes and brings back with history', async () => {
    const store = openStore();
    const lesson = await saved(store, await store.create('a'), 'b');
    expect(await store.remove(lesson.id)).toBe(true);
    expect(await store.list()).toEqual([]);
    expect(await store.read(lesson.id)).toBeNull();
    expect(await store.remove(lesson.id)).toBe(false);
    expect(await store.restore(lesson.id)).toEqual(lesson);
    expect(await store.readStep(lesson.id, 0)).toEqual({ step: 0, text: 'a' });
  });

  it('[SE6] forgets what was removed before a time and keeps the rest', async () => {
    const store = openStore();
    const thrown = await store.create('a');
    const kept = await store.create('b');
    await store.remove(thrown.id);
    await store.forgetRemovedBefore(LONG_AGO);
    expect(await store.restore(thrown.id)).toMatchObject({ id: thrown.id });
    await store.remove(thrown.id);
    await store.forgetRemovedBefore(new Date(LONG_AGO.getTime() + 1));
    expect(await store.restore(thrown.id)).toBeNull();
    expect((await store.list()).map((each) => each.id)).toEqual([kept.id]);
  });

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
  // every version before this one has a sample: store-1.sqlite, version 2 in the killed store, store-3.sqlite, store-4.sqlite, store-5.sqlite, store-6.sqlite, store-7.sqlite, store-8.sqlite, store-9.sqlite, store-10.sqlite, store-11.sqlite, store-12.sqlite, store-13.sqlite, store-14.sqlite, store-15.sqlite, store-16.sqlite, store-17.sqlite, store-18.sqlite
  expect(storeVersion(file)).toBe(19);
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

const KAITO = {
  name: 'Kaito',
  rows: 2,
  lastPlayedAt: '2026-11-26T18:30:00+01:00',
  minority: { isMinor: true, consent: { by: 'Oda Lindqvist-Reyes' } },
};

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
