/**
 * The store out of PostgreSQL into a file of SQLite, and back: so a backup of either goes into either.
 *
 * Conventions: what goes out is of one moment, while others write; what comes in takes its place in one transaction, in
 * which nobody else writes. Rows go a part at a time, so that a school's years fit into little memory.
 * Source: PostgreSQL 15 documentation, 13.2.2 "Repeatable Read Isolation Level" and "DECLARE".
 */
import { join } from 'node:path';
import { type Kysely, type RawBuilder, sql, type Transaction } from 'kysely';
import SQLite from 'libsql';
import type { BackupSource, Row } from '../copied.ts';
import { eraseAgainIn } from '../erased.ts';
import { newPlainStore, STORE_FILE } from '../open.ts';
import type { Tables } from '../tables.ts';
import { openPostgres } from './open.ts';

type Value = string | number | Uint8Array | null;
type Cells = Readonly<Record<string, Value>>;

/** Every table, none before one that it refers to. */
const TABLES = [
  ...(['lessons', 'steps', 'summaries', 'demonstrations', 'books', 'students', 'log_rows', 'links'] as const),
  ...(['hours', 'takes', 'voices', 'notes', 'erased', 'journal'] as const),
  ...(['teachers', 'passphrases', 'invitations', 'passkeys', 'challenges', 'sessions'] as const),
] satisfies readonly (keyof Tables)[];

/** Rows that are read at once, and of those with sound in them. */
const ROWS_AT_ONCE = 1000;
const SOUNDS_AT_ONCE = 10;

/** Characters and bytes that are written at once, about. */
const WRITTEN_AT_ONCE = 4 * 1024 * 1024;

function rowsAtOnce(table: string): number {
  return table === 'voices' || table === 'demonstrations' ? SOUNDS_AT_ONCE : ROWS_AT_ONCE;
}

function columnsOf(file: SQLite.Database, table: string): readonly string[] {
  const rows = file.prepare(`pragma table_info(${table})`).all() as readonly { readonly name: string }[];
  return rows.map(({ name }) => name);
}

/** Copies a table into a file of SQLite. */
async function copyOut(inside: Transaction<Tables>, file: SQLite.Database, table: string): Promise<void> {
  const columns = columnsOf(file, table);
  const names = sql.join(columns.map((name) => sql.ref(name)));
  const places = columns.map(() => '?').join(', ');
  // a new store has its first teacher already
  file.exec(`delete from ${table}`);
  const insert = file.prepare(`insert into ${table} (${columns.join(', ')}) values (${places})`);
  await sql`declare part no scroll cursor for select ${names} from ${sql.table(table)}`.execute(inside);
  const fetch = sql<Cells>`fetch forward ${sql.lit(rowsAtOnce(table))} from part`;
  for (;;) {
    const { rows } = await fetch.execute(inside);
    if (rows.length === 0) break;
    for (const row of rows) insert.run(...columns.map((name) => row[name] ?? null));
  }
  await sql`close part`.execute(inside);
}

/** Writes the store as it is at one moment into a file of SQLite. @returns it, open */
async function copyInto(database: Kysely<Tables>, copy: string): Promise<SQLite.Database> {
  const file = newPlainStore(copy);
  try {
    file.pragma('foreign_keys = OFF');
    file.exec('begin');
    const reading = database.transaction().setIsolationLevel('repeatable read').setAccessMode('read only');
    await reading.execute(async (inside) => {
      for (const table of TABLES) await copyOut(inside, file, table);
    });
    file.exec('commit');
    return file;
  } catch (error) {
    file.close();
    throw error;
  }
}

/** A store in PostgreSQL, to be backed up. */
export async function postgresSource(address: string): Promise<BackupSource> {
  const database = await openPostgres(address);
  return {
    copyInto: (file) => copyInto(database, file),
    takeNow: async ({ student, take }) => {
      const found = database.selectFrom('takes').selectAll().where('student_id', '=', student);
      return ((await found.where('take_id', '=', take).executeTakeFirst()) as Row | undefined) ?? null;
    },
    close: () => database.destroy(),
  };
}

function sizeOf(value: Value): number {
  return typeof value === 'string' || value instanceof Uint8Array ? value.length : 8;
}

function cellOf(value: Value | ArrayBuffer | undefined): Value {
  return value instanceof ArrayBuffer ? new Uint8Array(value) : (value ?? null);
}

/** Rows of a table of a file, as many together as are written at once. */
function* parts(
  file: SQLite.Database,
  table: string,
  columns: readonly string[],
): Generator<readonly (readonly Value[])[]> {
  let part: (readonly Value[])[] = [];
  let size = 0;
  const all = file.prepare(`select ${columns.join(', ')} from ${table}`).iterate() as Iterable<Cells>;
  for (const row of all) {
    const values = columns.map((name) => cellOf(row[name]));
    part.push(values);
    size += values.reduce<number>((sum, value) => sum + sizeOf(value), 0);
    if (part.length < ROWS_AT_ONCE && size < WRITTEN_AT_ONCE) continue;
    yield part;
    [part, size] = [[], 0];
  }
  if (part.length > 0) yield part;
}

/** Adds what is in a table of a file; what is here under the same key stays. */
async function copyIn(inside: Transaction<Tables>, file: SQLite.Database, table: string): Promise<void> {
  const columns = columnsOf(file, table);
  const names = sql.join(columns.map((name) => sql.ref(name)));
  for (const part of parts(file, table, columns)) {
    const rows: RawBuilder<unknown>[] = part.map((values) => sql`(${sql.join(values)})`);
    const into = sql`insert into ${sql.table(table)} (${names}) values ${sql.join(rows)}`;
    await sql`${into} on conflict do nothing`.execute(inside);
  }
}

/** How a table is treated. */
export interface Replacing {
  /** Tables that stay as they are. */
  readonly own: ReadonlySet<string>;
  /** Tables in which what is here stays beside what comes. */
  readonly joined: ReadonlySet<string>;
  /** Notes that stay as they are. */
  readonly ownNotes: readonly string[];
}

async function emptyTables(inside: Transaction<Tables>, { own, joined, ownNotes }: Replacing): Promise<void> {
  for (const table of TABLES.toReversed()) {
    if (table === 'notes') await inside.deleteFrom('notes').where('key', 'not in', ownNotes).execute();
    else if (!own.has(table) && !joined.has(table)) await inside.deleteFrom(table).execute();
  }
}

/** Puts what is in a file of SQLite in the place of a store, all or nothing. @returns how much stays erased */
export async function replacePostgres(address: string, folder: string, how: Replacing): Promise<number> {
  const database = await openPostgres(address);
  const file = new SQLite(join(folder, STORE_FILE), { readonly: true });
  try {
    return await database.transaction().execute(async (inside) => {
      const tables = sql.join(TABLES.map((table) => sql.table(table)));
      await sql`lock table ${tables} in share row exclusive mode`.execute(inside);
      await emptyTables(inside, how);
      for (const table of TABLES) if (!how.own.has(table)) await copyIn(inside, file, table);
      // a row that comes later has a number after all that ever were
      await sql`select setval(of, greatest(nextval(of), (select max(row) from log_rows)))
        from pg_get_serial_sequence('log_rows', 'row') as of`.execute(inside);
      return eraseAgainIn(inside);
    });
  } finally {
    file.close();
    await database.destroy();
  }
}
