/**
 * Opening the store: one SQLite file, written ahead and synced at every commit, so that what was acknowledged
 * survives a crash of the program and of the machine.
 *
 * Source: SQLite documentation, "PRAGMA synchronous": in WAL mode FULL syncs the log after each transaction.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { Kysely, SqliteDialect } from 'kysely';
import SQLite from 'libsql';
import type { Tables } from './tables.ts';

/** Statements that bring a store from each version to the next; `user_version` counts those done. */
const MIGRATIONS: readonly string[] = [
  `create table lessons (
     id text primary key not null,
     revision integer not null,
     step integer not null,
     last_step integer not null,
     created_at text not null,
     updated_at text not null,
     deleted_at text
   ) strict;
   create table steps (
     lesson_id text not null references lessons (id) on delete cascade,
     step integer not null,
     text text not null,
     primary key (lesson_id, step)
   ) strict, without rowid;
   create table notes (key text primary key not null, value text not null) strict, without rowid;`,
  `create table students (
     id text primary key not null,
     name text not null,
     log text not null,
     assignments text not null,
     revision integer not null,
     created_at text not null,
     updated_at text not null,
     deleted_at text
   ) strict;`,
  `alter table students add column level text not null default 'intermediate';`,
];

/** Version of the store that a database holds: how many of the migrations have been done. */
export function storeVersion(database: SQLite.Database): number {
  const [row] = database.prepare('pragma user_version').all() as { readonly user_version: number }[];
  return row?.user_version ?? 0;
}

function migrate(database: SQLite.Database): void {
  const done = storeVersion(database);
  if (done > MIGRATIONS.length) {
    throw new Error(
      `The lessons were written by a newer Shedbook (store version ${done}, this one knows ${MIGRATIONS.length}). Use the newer one.`,
    );
  }
  for (let version = done; version < MIGRATIONS.length; version += 1) {
    database.transaction(() => {
      database.exec(MIGRATIONS[version] as string);
      database.pragma(`user_version = ${version + 1}`);
    })();
  }
}

/** File name of the store inside the data folder. */
export const STORE_FILE = 'lessons.sqlite';

/**
 * Opens (and creates or brings up to date) the store in a folder.
 * @throws Error with a message for people when the folder cannot be written or the store is newer than this.
 */
export function openDatabase(dataDir: string): Kysely<Tables> {
  mkdirSync(dataDir, { recursive: true });
  const database = new SQLite(join(dataDir, STORE_FILE));
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = ON');
  database.pragma('busy_timeout = 5000');
  migrate(database);
  return new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });
}
