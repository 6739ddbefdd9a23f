/**
 * Restoring a backup: what it holds takes the place of what is there, in one transaction, also while the desk works.
 *
 * Conventions: nothing is touched before the whole backup was read and found to be as it was written; what was there is
 * backed up beside it first; what was erased since the backup stays erased; passphrases, sign-ins, the clock of
 * the bin and what the store is called in a bucket are the folder's own.
 */
import { mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { InputError, makeFolder, type Restored } from '@shedbook/host';
import type { Kysely, Selectable } from 'kysely';
import SQLite from 'libsql';
import { isDamage } from '../store/damaged.ts';
import { overwriteErased } from '../store/erase.ts';
import { eraseAgain } from '../store/erased.ts';
import { openJournal } from '../store/journal.ts';
import { MEDIA_FOLDER } from '../store/media-files.ts';
import { makeStore, STORE_FILE } from '../store/open.ts';
import { hasStore, openStore, shownPlace } from '../store/open-store.ts';
import { openTakesOf, STORE_NAME_NOTE, settleTakes } from '../store/open-takes.ts';
import type { StorePlace } from '../store/place.ts';
import type { Tables } from '../store/tables.ts';
import { takeFileName } from '../store/take-files.ts';
import { layFiles } from '../store/whole-files.ts';
import { MEDIA_PART, TAKES_PART } from './archive.ts';
import { ADMISSIONS, writeBackup } from './back-up.ts';
import { unpackBackup } from './read-backup.ts';

/** Beginning of the name of a folder that a backup is unpacked in. */
export const RESTORING = 'restoring-';

/** Beginning of the name of a backup that is made before another is restored. */
export const BEFORE_RESTORE = 'before-restore-';

/** Notes that stay as they are in the folder, where it has them. */
const OWN_NOTES = ['steady-clock', STORE_NAME_NOTE] as const;

/** Tables that stay as they are. */
const OWN_TABLES: ReadonlySet<string> = new Set(ADMISSIONS);

/** Tables in which what is here stays beside what the backup has. */
const JOINED_TABLES: ReadonlySet<string> = new Set(['erased', 'journal', 'passphrases']);

function tablesOf(database: SQLite.Database): readonly string[] {
  const rows = database
    .prepare("select name from main.sqlite_master where type = 'table' and name not like 'sqlite_%'")
    .all() as readonly { readonly name: string }[];
  return rows.map(({ name }) => name).filter((name) => !OWN_TABLES.has(name));
}

function columnsOf(database: SQLite.Database, table: string): string {
  const rows = database.prepare(`pragma main.table_info(${table})`).all() as readonly {
    readonly name: string;
  }[];
  return rows.map(({ name }) => name).join(', ');
}

/** Adds what is in a table of the backup; what stays as it is here is not written over. */
function copyTable(database: SQLite.Database, table: string): void {
  const columns = columnsOf(database, table);
  database.exec(`insert or ignore into main.${table} (${columns}) select ${columns} from restored.${table}`);
}

/** What is here and the backup takes the place of. */
function emptyTable(database: SQLite.Database, table: string): void {
  if (table === 'notes') database.prepare('delete from main.notes where key not in (?, ?)').run(...OWN_NOTES);
  else if (!JOINED_TABLES.has(table)) database.exec(`delete from main.${table}`);
}

/** Puts the unpacked store in the place of another, in one transaction. @returns how much stays erased */
async function replaceStore({ dataDir, address }: StorePlace, unpacked: string): Promise<number> {
  if (address === null) return replaceFile(dataDir, unpacked);
  const { replacePostgres } = await import('../store/postgres/copy.ts');
  const how = { own: OWN_TABLES, joined: JOINED_TABLES, ownNotes: OWN_NOTES };
  return replacePostgres(address, unpacked, how);
}

function replaceFile(dataDir: string, unpacked: string): number {
  const database = new SQLite(join(dataDir, STORE_FILE));
  try {
    for (const each of [
      'busy_timeout = 10000',
      'synchronous = FULL',
      'secure_delete = ON',
      'foreign_keys = ON',
    ])
      database.pragma(each);
    database.prepare('attach ? as restored').run(join(unpacked, STORE_FILE));
    database.exec('begin immediate');
    database.exec('pragma defer_foreign_keys = on');
    const tables = tablesOf(database);
    for (const table of tables) emptyTable(database, table);
    for (const table of tables) copyTable(database, table);
    const leftErased = eraseAgain(database);
    database.exec('commit');
    return leftErased;
  } finally {
    // what was not committed is undone
    database.close();
  }
}

/** Whether SQLite finds a store whole. */
function isWhole(folder: string): boolean {
  const database = new SQLite(join(folder, STORE_FILE));
  try {
    const [found] = database.prepare('pragma integrity_check(1)').all() as readonly {
      readonly integrity_check: string;
    }[];
    return found?.integrity_check === 'ok';
  } catch (error) {
    if (isDamage(error)) return false;
    throw error;
  } finally {
    database.close();
  }
}

/** Makes the folders that the files of a backup go into. */
function makeParts(unpacked: string): void {
  for (const part of [TAKES_PART, MEDIA_PART]) mkdirSync(join(unpacked, part), { mode: 0o700 });
}

/** Lays files beside those that are there. */
async function layParts(place: StorePlace, unpacked: string): Promise<void> {
  const takes = await openTakesOf(place);
  const database = await openStore(place);
  try {
    await settleTakes(database, place, takes);
  } finally {
    await database.destroy();
  }
  await takes.lay(join(unpacked, TAKES_PART));
  await layFiles(join(unpacked, MEDIA_PART), join(place.dataDir, MEDIA_FOLDER));
}

/** Counts what is in a store, and what of its takes has its recording. */
async function countIn(
  place: StorePlace,
): Promise<Omit<Restored, 'folder' | 'before' | 'leftErased' | 'madeAt'>> {
  const { dataDir } = place;
  const database = await openStore(place);
  try {
    await overwriteErased(database, dataDir);
    const count = async (table: 'lessons' | 'students') => {
      const all = database.selectFrom(table).select((of) => of.fn.countAll<number>().as('n'));
      return (await all.executeTakeFirstOrThrow()).n;
    };
    const there = await (await openTakesOf(place)).names();
    const rows = await database
      .selectFrom('takes')
      .select(['student_id as student', 'take_id as take', 'checksum'])
      .execute();
    await openJournal(database, () => new Date()).write({ who: 'computer', did: 'backup-restored' });
    const takes = rows.filter((each) => there.has(takeFileName(each))).length;
    return {
      ...{ takes, damagedTakes: rows.length - takes },
      ...{ lessons: await count('lessons'), students: await count('students') },
    };
  } finally {
    await database.destroy();
  }
}

/** Keeps what is there now: as a backup, or, where it is too damaged for one, as it is. @returns where; null for nothing */
async function keepWhatIsThere(place: StorePlace): Promise<string | null> {
  const { dataDir, address } = place;
  if (!(await hasStore(place))) return null;
  const name = join(dataDir, `${BEFORE_RESTORE}${new Date().toISOString().replace(/[:.]/g, '-')}`);
  if (address !== null || isWhole(dataDir)) return (await writeBackup(place, `${name}.tar`)).file;
  mkdirSync(name, { mode: 0o700 });
  for (const each of readdirSync(dataDir))
    if (each.startsWith(STORE_FILE)) renameSync(join(dataDir, each), join(name, each));
  return name;
}

/** Brings a folder of a backup to what was erased meanwhile. @returns how many things there were */
function eraseInUnpacked(erased: readonly Selectable<Tables['erased']>[], unpacked: string): number {
  const database = new SQLite(join(unpacked, STORE_FILE));
  try {
    database.pragma('secure_delete = ON');
    database.pragma('foreign_keys = ON');
    const note = database.prepare('insert or ignore into erased (kind, id, erased_at) values (?, ?, ?)');
    for (const { kind, id, erased_at } of erased) note.run(kind, id, erased_at);
    return eraseAgain(database);
  } finally {
    database.close();
  }
}

/**
 * Erases what was erased also in what was kept before a backup was restored; what was too damaged for a backup is
 * deleted whole.
 */
export async function eraseInKept(database: Kysely<Tables>, dataDir: string): Promise<void> {
  const before = readdirSync(dataDir).filter((each) => each.startsWith(BEFORE_RESTORE));
  const erased = before.length === 0 ? [] : await database.selectFrom('erased').selectAll().execute();
  for (const name of before) {
    const kept = join(dataDir, name);
    if (!name.endsWith('.tar')) {
      rmSync(kept, { recursive: true, force: true });
      continue;
    }
    const unpacked = mkdtempSync(join(dataDir, RESTORING));
    try {
      makeParts(unpacked);
      await unpackBackup(kept, unpacked);
      makeStore(unpacked);
      if (eraseInUnpacked(erased, unpacked) > 0)
        await writeBackup({ dataDir: unpacked, address: null, takes: null }, kept);
    } finally {
      rmSync(unpacked, { recursive: true, force: true });
    }
  }
}

/**
 * Puts what a backup holds in the place of what a store holds, in whichever database either lies.
 * @throws InputError where the backup is none, damaged or of a newer program, or the folder cannot be written; nothing
 * is changed then
 */
export async function restoreBackup(place: StorePlace, file: string): Promise<Restored> {
  const { dataDir } = place;
  makeFolder(dataDir, 0o700);
  const unpacked = mkdtempSync(join(dataDir, RESTORING));
  try {
    makeParts(unpacked);
    const madeAt = await unpackBackup(file, unpacked);
    if (!isWhole(unpacked)) throw new InputError(({ words }) => words.backup.damaged({ file }));
    makeStore(unpacked);
    const before = await keepWhatIsThere(place);
    if (place.address === null) makeStore(dataDir);
    await layParts(place, unpacked);
    const leftErased = await replaceStore(place, unpacked);
    return { folder: await shownPlace(place), before, madeAt, leftErased, ...(await countIn(place)) };
  } finally {
    rmSync(unpacked, { recursive: true, force: true });
  }
}
