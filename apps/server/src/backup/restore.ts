/**
 * Restoring a backup: what it holds takes the place of what is there, in one transaction, also while the desk works.
 *
 * Conventions: nothing is touched before the whole backup was read and found to be as it was written; what was there is
 * backed up beside it first; what was erased since the backup stays erased; passphrase, sign-ins and the clock of the
 * bin are the folder's own.
 */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { InputError, makeFolder, type Restored } from '@shedbook/host';
import SQLite from 'libsql';
import { isDamage } from '../store/damaged.ts';
import { overwriteErased } from '../store/erase.ts';
import { eraseAgain } from '../store/erased.ts';
import { openJournal } from '../store/journal.ts';
import { MEDIA_FOLDER } from '../store/media-files.ts';
import { openDatabase, STORE_FILE } from '../store/open.ts';
import { TAKES_FOLDER, takeFileName } from '../store/take-files.ts';
import { MEDIA_PART, TAKES_PART } from './archive.ts';
import { writeBackup } from './back-up.ts';
import { unpackBackup } from './read-backup.ts';

/** Beginning of the name of a folder that a backup is unpacked in. */
export const RESTORING = 'restoring-';

/** Beginning of the name of a backup that is made before another is restored. */
export const BEFORE_RESTORE = 'before-restore-';

/** Notes that stay as they are in the folder, where it has them. */
const OWN_NOTES = "('passphrase', 'steady-clock')";

/** Tables that stay as they are. */
const OWN_TABLES: ReadonlySet<string> = new Set(['sessions']);

/** Tables in which what is here stays beside what the backup has. */
const JOINED_TABLES: ReadonlySet<string> = new Set(['erased', 'journal']);

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
  if (table === 'notes') database.exec(`delete from main.notes where key not in ${OWN_NOTES}`);
  else if (!JOINED_TABLES.has(table)) database.exec(`delete from main.${table}`);
}

/** Puts the unpacked store in the place of the one in a folder, in one transaction. @returns how much stays erased */
function replaceStore(dataDir: string, unpacked: string): number {
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

/** The folders of a backup and where they belong. */
const PARTS = [
  [TAKES_PART, TAKES_FOLDER],
  [MEDIA_PART, MEDIA_FOLDER],
] as const;

/** Makes the folders that the files of a backup go into. */
function makeParts(unpacked: string): void {
  for (const [part] of PARTS) mkdirSync(join(unpacked, part), { mode: 0o700 });
}

/** Lays files beside those that are there: their names say what is in them, so none takes another's place. */
async function layFiles(dataDir: string, unpacked: string): Promise<void> {
  for (const [part, folder] of PARTS) await layPart(join(unpacked, part), join(dataDir, folder));
}

async function layPart(part: string, folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  for (const name of readdirSync(part)) renameSync(join(part, name), join(folder, name));
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  await handle.sync();
  await handle.close();
}

/** Counts what is in a store, and what of its takes has its recording. */
async function countIn(
  dataDir: string,
): Promise<Omit<Restored, 'folder' | 'before' | 'leftErased' | 'madeAt'>> {
  const database = openDatabase(dataDir);
  try {
    await overwriteErased(database, dataDir);
    const count = async (table: 'lessons' | 'students') => {
      const all = database.selectFrom(table).select((of) => of.fn.countAll<number>().as('n'));
      return (await all.executeTakeFirstOrThrow()).n;
    };
    const there = new Set(readdirSync(join(dataDir, TAKES_FOLDER)));
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
async function keepWhatIsThere(dataDir: string): Promise<string | null> {
  if (!existsSync(join(dataDir, STORE_FILE))) return null;
  const name = join(dataDir, `${BEFORE_RESTORE}${new Date().toISOString().replace(/[:.]/g, '-')}`);
  if (isWhole(dataDir)) return (await writeBackup(dataDir, `${name}.tar`)).file;
  mkdirSync(name, { mode: 0o700 });
  for (const each of readdirSync(dataDir))
    if (each.startsWith(STORE_FILE)) renameSync(join(dataDir, each), join(name, each));
  return name;
}

/** Brings a folder of a backup to what was erased meanwhile. */
function eraseInUnpacked(dataDir: string, unpacked: string): number {
  const database = new SQLite(join(unpacked, STORE_FILE));
  try {
    database.pragma('secure_delete = ON');
    database.pragma('foreign_keys = ON');
    database.prepare('attach ? as live').run(join(dataDir, STORE_FILE));
    database.exec('insert or ignore into main.erased select * from live.erased');
    return eraseAgain(database);
  } finally {
    database.close();
  }
}

/**
 * Erases what was erased also in what was kept before a backup was restored; what was too damaged for a backup is
 * deleted whole.
 */
export async function eraseInKept(dataDir: string): Promise<void> {
  for (const name of readdirSync(dataDir).filter((each) => each.startsWith(BEFORE_RESTORE))) {
    const kept = join(dataDir, name);
    if (!name.endsWith('.tar')) {
      rmSync(kept, { recursive: true, force: true });
      continue;
    }
    const unpacked = mkdtempSync(join(dataDir, RESTORING));
    try {
      makeParts(unpacked);
      await unpackBackup(kept, unpacked);
      await openDatabase(unpacked).destroy();
      if (eraseInUnpacked(dataDir, unpacked) > 0) await writeBackup(unpacked, kept);
    } finally {
      rmSync(unpacked, { recursive: true, force: true });
    }
  }
}

/**
 * Puts what a backup holds in the place of what is in a folder.
 * @throws InputError where the backup is none, damaged or of a newer program, or the folder cannot be written; nothing
 * is changed then
 */
export async function restoreBackup(dataDir: string, file: string): Promise<Restored> {
  makeFolder(dataDir, 0o700);
  const unpacked = mkdtempSync(join(dataDir, RESTORING));
  try {
    makeParts(unpacked);
    const madeAt = await unpackBackup(file, unpacked);
    if (!isWhole(unpacked)) throw new InputError(({ words }) => words.backup.damaged({ file }));
    await openDatabase(unpacked).destroy();
    const before = await keepWhatIsThere(dataDir);
    await openDatabase(dataDir).destroy();
    await layFiles(dataDir, unpacked);
    const leftErased = replaceStore(dataDir, unpacked);
    return { folder: dataDir, before, madeAt, leftErased, ...(await countIn(dataDir)) };
  } finally {
    rmSync(unpacked, { recursive: true, force: true });
  }
}
