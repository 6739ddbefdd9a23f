/**
 * Work in a file of its own beside the store, for a server that keeps lessons in a file, too.
 *
 * Conventions: the file is made with the first piece of work.
 * Source: SQLite documentation, "UPDATE … RETURNING": one statement, so that nobody else takes the same.
 */
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'libsql';
import { HELD_MS, MOST_TRIES, type Work, type WorkAt, type WorkShelf } from './work-shelf.ts';

/** Name of the file. */
export const WORK_FILE = 'work.sqlite';

const TABLE = `create table if not exists work (
  id text primary key, kind text not null, of_what text not null, at text not null, told text, tries integer not null,
  holder text, held_until integer not null, asked_at integer not null)`;

/** Milliseconds that another program that writes is waited for. */
const WAIT_MS = 10_000;

interface Row {
  readonly id: string;
  readonly kind: string;
  readonly of_what: string;
  readonly at: WorkAt;
  readonly told: string | null;
  readonly asked_at: number;
}

function openFile(file: string): SQLite.Database {
  // whoever runs the server alone reads it
  writeFileSync(file, '', { flag: 'a', mode: 0o600 });
  const database = new SQLite(file);
  for (const each of [`busy_timeout = ${WAIT_MS}`, 'synchronous = FULL', 'secure_delete = ON'])
    database.pragma(each);
  database.exec(TABLE);
  return database;
}

/** A shelf in a folder. @param heldMs milliseconds for which work is held after it was last said to be */
export function openFileShelf(dataDir: string, heldMs = HELD_MS): WorkShelf {
  const now = Date.now;
  const file = join(dataDir, WORK_FILE);
  let open: SQLite.Database | null = null;
  const database = () => {
    open ??= openFile(file);
    return open;
  };
  /** Rows that a statement gives; none where there never was any work. */
  const rows = (statement: string, ...values: readonly (string | number | null)[]): readonly Row[] => {
    if (!open && !existsSync(file)) return [];
    return database()
      .prepare(statement)
      .all(...values) as readonly Row[];
  };
  const work = ({ id, kind, of_what: of, at, told, asked_at }: Row): Work => {
    return { id, kind, of, at, told, idleMs: now() - asked_at };
  };
  const held = "id = ? and holder = ? and at = 'begun' returning *";
  return {
    add: async ({ id, kind, of }) => {
      const insert = database().prepare("insert into work values (?, ?, ?, 'waiting', null, 0, null, 0, ?)");
      insert.run(id, kind, of, now());
    },
    find: async (id) => rows('select * from work where id = ?', id).map(work)[0] ?? null,
    list: async () => rows('select * from work order by rowid').map(work),
    ask: async (id) => void rows('update work set asked_at = ? where id = ? returning *', now(), id),
    askAll: async () => void rows('update work set asked_at = ? returning *', now()),
    take: async (kind, holder) => {
      rows(
        "update work set at = 'failed' where kind = ? and at = 'begun' and held_until < ? and tries >= ? returning *",
        ...[kind, now(), MOST_TRIES],
      );
      const [taken] = rows(
        `update work set at = 'begun', holder = ?, held_until = ?, tries = tries + 1 where id = (select id from work
          where kind = ? and (at = 'waiting' or (at = 'begun' and held_until < ?)) order by rowid limit 1) returning *`,
        ...[holder, now() + heldMs, kind, now()],
      );
      return taken ? work(taken) : null;
    },
    hold: async (id, holder, told) =>
      rows(
        `update work set held_until = ?, told = coalesce(?, told) where ${held}`,
        ...[now() + heldMs, told, id, holder],
      ).length > 0,
    end: async (id, holder, { at, told }) =>
      void rows(`update work set at = ?, told = coalesce(?, told) where ${held}`, at, told, id, holder),
    letGo: async (id, holder) =>
      void rows(`update work set at = 'waiting', tries = tries - 1 where ${held}`, id, holder),
    remove: async (id) => rows('delete from work where id = ? returning *', id).length > 0,
    close: async () => {
      open?.close();
      open = null;
    },
  };
}
