/**
 * Looking at a store without changing it: whether it is whole, what of it can be read, and saving that as files.
 *
 * Source: SQLite documentation, "PRAGMA integrity_check"; Node.js, `statfs`.
 */
import { existsSync, readdirSync, statfsSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileNameOf, parseLesson } from '@shedbook/core';
import { type Examination, InputError, makeFolder, reasonOf, type Saved } from '@shedbook/host';
import { Kysely, SqliteDialect, sql } from 'kysely';
import SQLite from 'libsql';
import { checksumOf } from './checksum.ts';
import { COPY } from './erase.ts';
import { createLessonStore, type LessonStore } from './lessons.ts';
import { STORE_FILE, STORE_VERSION, storeVersion } from './open.ts';
import { shownPlace } from './open-store.ts';
import { openTakesOf, shownTakes } from './open-takes.ts';
import { placeOf, type StorePlace } from './place.ts';
import { createStudentStore, type StudentStore } from './students.ts';
import type { Tables } from './tables.ts';
import { formerTakeName, takeFileName } from './take-files.ts';

/** A store that is looked at. */
interface Opened {
  readonly database: Kysely<Tables>;
  readonly lessons: LessonStore;
  readonly students: StudentStore;
  readonly version: number;
  readonly faults: readonly string[];
  close(): Promise<void>;
}

/** How many faults SQLite lists. */
const MOST_FAULTS = 20;

function storesOf(database: Kysely<Tables>): Pick<Opened, 'database' | 'lessons' | 'students'> {
  const clock = () => new Date();
  return {
    database,
    lessons: createLessonStore(database, clock),
    students: createStudentStore(database, clock),
  };
}

function openFile(file: string): Opened {
  const raw = new SQLite(file, { readonly: true });
  const database = new Kysely<Tables>({ dialect: new SqliteDialect({ database: raw }) });
  try {
    const [version, faults] = [storeVersion(raw), faultsOf(raw)];
    return { ...storesOf(database), version, faults, close: async () => void raw.close() };
  } catch (error) {
    raw.close();
    throw error;
  }
}

/** Opens a store to look at it. @throws InputError where its database stands in the way */
async function openToRead({ dataDir, address }: StorePlace): Promise<Opened> {
  if (address === null) return openFile(join(dataDir, STORE_FILE));
  const { lookInto } = await import('./postgres/open.ts');
  const { database, version } = await lookInto(address);
  return { ...storesOf(database), version, faults: [], close: () => database.destroy() };
}

function faultsOf(raw: SQLite.Database): readonly string[] {
  try {
    const rows = raw.prepare(`pragma integrity_check(${MOST_FAULTS})`).all() as readonly {
      readonly integrity_check: string;
    }[];
    return rows.map((row) => row.integrity_check).filter((text) => text !== 'ok');
  } catch (error) {
    return [(error as Error).message];
  }
}

/** What a reading comes to, or otherwise where the file is too damaged for it. */
async function orElse<T>(reading: () => Promise<T>, otherwise: T): Promise<T> {
  try {
    return await reading();
  } catch {
    return otherwise;
  }
}

async function countDamagedRows({ students }: Opened): Promise<number> {
  let damaged = 0;
  for (const { id } of await students.list())
    damaged += (await students.rows(id)).filter(({ isSound }) => !isSound).length;
  return damaged;
}

/** Takes whose recording is not where recordings lie. @throws InputError where a bucket stands in the way */
async function countLostTakes({ database }: Opened, place: StorePlace): Promise<number> {
  const there = await (await openTakesOf(place)).names();
  const rows = database.selectFrom('takes').select(['student_id as student', 'take_id as take', 'checksum']);
  const named = await orElse(() => rows.execute(), []);
  return named.filter((each) => !there.has(takeFileName(each)) && !there.has(formerTakeName(each))).length;
}

async function look(opened: Opened, place: StorePlace) {
  const { version, faults } = opened;
  const isCurrent = version === STORE_VERSION;
  const damagedLessons = isCurrent ? await orElse(() => opened.lessons.damaged(), []) : [];
  const lessons = isCurrent ? (await orElse(() => opened.lessons.list(), [])).length : 0;
  const students = isCurrent ? (await orElse(() => opened.students.list(), [])).length : 0;
  const damagedRows = isCurrent ? await orElse(() => countDamagedRows(opened), 0) : 0;
  const lostTakes = isCurrent ? await countLostTakes(opened, place) : 0;
  const isSound = faults.length + damagedLessons.length + damagedRows + lostTakes === 0;
  return { version, faults, damagedLessons, lessons, students, damagedRows, lostTakes, isSound };
}

const NOTHING = {
  faults: [],
  damagedLessons: [],
  lessons: 0,
  students: 0,
  damagedRows: 0,
  lostTakes: 0,
} as const;

/** The room that is left on the disk of a folder, in bytes. */
function freeBytesOf(folder: string): number {
  const { bavail, bsize } = existsSync(folder) ? statfsSync(folder) : { bavail: 0, bsize: 0 };
  return bavail * bsize;
}

/** Looks at the store of a place; the user's own where none is named. Nothing is changed. @throws InputError where its database stands in the way */
export async function examineStore(dataDir?: string, storeAddress?: string): Promise<Examination> {
  const place = placeOf(dataDir, storeAddress);
  const around = {
    ...{ folder: place.dataDir, address: null, known: STORE_VERSION, takesIn: await shownTakes(place) },
    freeBytes: freeBytesOf(place.dataDir),
  };
  if (place.address === null) return { ...around, ...(await examineFile(place)) };
  return { ...around, address: await shownPlace(place), ...(await examineDatabase(place)) };
}

async function examineDatabase(place: StorePlace) {
  const opened = await openToRead(place);
  try {
    const exists = opened.version > 0;
    const size = sql<{ bytes: number }>`select pg_database_size(current_database()) as bytes`;
    const storeBytes = (await size.execute(opened.database)).rows[0]?.bytes ?? 0;
    return { exists, storeBytes, copies: [], ...(await look(opened, place)) };
  } finally {
    await opened.close();
  }
}

async function examineFile(place: StorePlace) {
  const folder = place.dataDir;
  const file = join(folder, STORE_FILE);
  const exists = existsSync(file);
  const around = {
    exists,
    // what was written last lies beside it
    storeBytes: [file, `${file}-wal`].reduce(
      (sum, each) => sum + (existsSync(each) ? statSync(each).size : 0),
      0,
    ),
    copies: existsSync(folder) ? readdirSync(folder).filter((name) => COPY.test(name)) : [],
  };
  if (!exists) return { ...around, version: null, ...NOTHING, isSound: true };
  try {
    const opened = openFile(file);
    try {
      return { ...around, ...(await look(opened, place)) };
    } finally {
      await opened.close();
    }
  } catch (error) {
    if (error instanceof InputError) throw error;
    const faults = [(error as Error).message];
    return { ...around, version: null, ...NOTHING, faults, isSound: false };
  }
}

/** The newest text of a lesson that can be read, or null. */
async function newestText({ database, lessons }: Opened, id: string): Promise<string | null> {
  const row = await orElse(
    () => database.selectFrom('lessons').select('last_step').where('id', '=', id).executeTakeFirst(),
    undefined,
  );
  for (let step = row?.last_step ?? -1; step >= 0; step -= 1) {
    const found = await orElse(() => lessons.readStep(id, step), null);
    if (found) return found.text;
  }
  return null;
}

/** A name that no other file has yet. */
function freeName(folder: string, stem: string, ending: string): string {
  const plain = `${stem}${ending}`;
  if (!existsSync(join(folder, plain))) return plain;
  return `${stem}-${checksumOf(`${stem} ${readdirSync(folder).length}`).slice(0, 6)}${ending}`;
}

/**
 * Saves everything that can be read of a store as files: lessons, and each student's practice row by row.
 * @throws InputError where the folder cannot be written
 */
export async function saveReadable(
  dataDir: string | undefined,
  folder: string,
  storeAddress?: string,
): Promise<Saved> {
  try {
    return await saveInto(placeOf(dataDir, storeAddress), folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).syscall === undefined) throw error;
    throw new InputError((to) => to.words.unwritable({ file: folder, why: reasonOf(error, to) }));
  }
}

async function saveInto(place: StorePlace, folder: string): Promise<Saved> {
  makeFolder(folder);
  const opened = await openToRead(place);
  const write = (stem: string, ending: string, text: string) =>
    writeFileSync(join(folder, freeName(folder, stem, ending)), text, { flag: 'wx' });
  const writeLesson = (text: string) =>
    write(fileNameOf(parseLesson(text, 'lesson').lesson?.title ?? null, ''), '.lesson.yaml', text);
  try {
    const lessons = await orElse(() => opened.lessons.list(), []);
    for (const { text } of lessons) writeLesson(text);
    const damaged = await orElse(() => opened.lessons.damaged(), []);
    const earlier = (await Promise.all(damaged.map(({ id }) => newestText(opened, id)))).filter(
      (text) => text !== null,
    );
    for (const text of earlier) writeLesson(text);
    const students = await orElse(() => opened.students.list(), []);
    for (const { id, name, assignments, level, setUp } of students) {
      const rows = (await orElse(() => opened.students.rows(id), [])).filter(({ isSound }) => isSound);
      const entries = rows.map(({ text }) => text).join(',\n');
      const about = JSON.stringify({ name, level, setUp, assignments });
      write(fileNameOf(name, ''), '.student.json', `{"student":${about},"rows":[\n${entries}\n]}\n`);
    }
    return { lessons: lessons.length, earlier: earlier.length, students: students.length };
  } finally {
    await opened.close();
  }
}
