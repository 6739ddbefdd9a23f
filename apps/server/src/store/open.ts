/**
 * Opening the store: one SQLite file, written ahead and synced at every commit, so that what was acknowledged
 * survives a crash of the program and of the machine; readable by its owner alone, and what is deleted is overwritten.
 *
 * Source: SQLite documentation, "PRAGMA synchronous": in WAL mode FULL syncs the log after each transaction; "PRAGMA
 * secure_delete": deleted content is overwritten with zeros.
 */
import { chmodSync, closeSync, openSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { InputError, makeFolder } from '@shedbook/host';
import { type Driver, Kysely, SqliteDialect } from 'kysely';
import SQLite from 'libsql';
import { isDamage, isFull } from './damaged.ts';
import { MIGRATIONS } from './migrations.ts';
import type { Tables } from './tables.ts';

/** File name of the store inside the data folder. */
export const STORE_FILE = 'lessons.sqlite';

/** Version of the store that this program writes. */
export const STORE_VERSION = MIGRATIONS.length;

/** Milliseconds that one program waits for another that writes. */
const WAIT_MS = 10_000;

/** Version of the store that a database holds: how many of the migrations have been done. */
export function storeVersion(database: SQLite.Database): number {
  const [row] = database.prepare('pragma user_version').all() as { readonly user_version: number }[];
  return row?.user_version ?? 0;
}

/** File name of the copy that is made of a store before it is brought up to date from a version. */
export function copyName(version: number): string {
  return `lessons.before-${version + 1}.sqlite`;
}

/** Makes a copy beside the store, whole or not at all. Source: SQLite documentation, VACUUM INTO. */
function copyStore(database: SQLite.Database, dataDir: string, version: number): void {
  const unfinished = join(dataDir, `${copyName(version)}.${process.pid}`);
  rmSync(unfinished, { force: true });
  database.prepare('vacuum into ?').run(unfinished);
  chmodSync(unfinished, 0o600);
  renameSync(unfinished, join(dataDir, copyName(version)));
}

/** @throws InputError where a newer program wrote a store */
export function refuseNewer(version: number): void {
  if (version <= STORE_VERSION) return;
  throw new InputError(({ words }) => words.store.newer({ found: version, known: STORE_VERSION }));
}

/**
 * Takes back what was begun. Source: SQLite documentation, "Response To Errors Within A Transaction": where the disk is
 * full SQLite may have done so by itself.
 */
function rollBack(database: SQLite.Database): void {
  try {
    database.exec('rollback');
  } catch {
    // It is taken back already.
  }
}

/** Brings a store up to date, alone: another program that starts at the same time waits and finds it done. */
function migrate(database: SQLite.Database, dataDir: string): void {
  const before = storeVersion(database);
  refuseNewer(before);
  if (before === STORE_VERSION) return;
  if (before > 0) copyStore(database, dataDir, before);
  takeSteps(database);
}

/** Takes every step that has not been taken, all or none. */
function takeSteps(database: SQLite.Database): void {
  database.exec('begin immediate');
  try {
    for (let version = storeVersion(database); version < STORE_VERSION; version += 1) {
      const { statements, finish } = MIGRATIONS[version] ?? { statements: '' };
      database.exec(statements);
      finish?.(database);
      database.exec(`pragma user_version = ${version + 1}`);
    }
    database.exec('commit');
  } catch (error) {
    rollBack(database);
    throw error;
  }
}

/** What is wrong with a store that cannot be opened or begun, in words; the error itself where it is another. */
export function openFault(error: unknown, dataDir: string): unknown {
  if (error instanceof InputError) return error;
  const { code: named, syscall } = error as NodeJS.ErrnoException;
  const code = named === 'ENOENT' && syscall === 'mkdir' ? 'EPERM' : String(named ?? '');
  const folder = { folder: dataDir };
  if (isDamage(error)) return new InputError(({ words }) => words.store.damaged(folder));
  if (/^SQLITE_(?:READONLY|CANTOPEN|PERM)|^(?:EACCES|EROFS|EPERM|ENOTDIR|EEXIST)$/.test(code))
    return new InputError(({ words }) => words.store.notWritable(folder));
  if (isFull(error)) return new InputError(({ words }) => words.store.full(folder));
  if (/^SQLITE_BUSY/.test(code)) return new InputError(({ words }) => words.store.busy(folder));
  return error;
}

/** The file, for its owner alone; the files that SQLite puts beside it are made like it. */
function makePrivate(file: string): void {
  closeSync(openSync(file, 'a', 0o600));
  try {
    chmodSync(file, 0o600);
  } catch {
    // A disk without owners, or the file of another user who lets this one write: there is nothing to set.
  }
}

function openFile(dataDir: string): SQLite.Database {
  makeFolder(dataDir, 0o700);
  const file = join(dataDir, STORE_FILE);
  makePrivate(file);
  const database = new SQLite(file);
  try {
    database.pragma(`busy_timeout = ${WAIT_MS}`);
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    database.pragma('foreign_keys = ON');
    database.pragma('secure_delete = ON');
    migrate(database, dataDir);
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
}

/** SQLite for the store: where a transaction is taken back already, what it failed of is told and not that. */
class StoreDialect extends SqliteDialect {
  override createDriver(): Driver {
    const driver = super.createDriver();
    const rollBackTransaction = driver.rollbackTransaction.bind(driver);
    driver.rollbackTransaction = (connection) => rollBackTransaction(connection).catch(() => undefined);
    return driver;
  }
}

/**
 * Opens (and creates or brings up to date) the store in a folder.
 * @throws InputError when the folder cannot be written, or the store is newer than this, damaged or in use.
 */
export function openDatabase(dataDir: string): Kysely<Tables> {
  try {
    return new Kysely<Tables>({ dialect: new StoreDialect({ database: openFile(dataDir) }) });
  } catch (error) {
    throw openFault(error, dataDir);
  }
}

/**
 * Makes the store in a folder, or brings it up to date, and leaves it closed.
 * @throws InputError as {@link openDatabase}
 */
export function makeStore(dataDir: string): void {
  try {
    openFile(dataDir).close();
  } catch (error) {
    throw openFault(error, dataDir);
  }
}

/** A new store as a file that nobody else uses: without a log beside it, and open. */
export function newPlainStore(file: string): SQLite.Database {
  const database = new SQLite(file);
  takeSteps(database);
  return database;
}
