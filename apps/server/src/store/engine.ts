/**
 * What a store asks of the database that it lies in, SQLite or PostgreSQL, where the two differ.
 *
 * Conventions: SQLite has one writer at a time; on PostgreSQL, where several write at once and several servers may share
 * one store, whoever reads before writing holds what they read until they have written.
 * Source: PostgreSQL 15 documentation, 13.3 "Explicit Locking".
 */
import { type Kysely, PostgresAdapter, sql, type Transaction } from 'kysely';
import type { Tables } from './tables.ts';

/** Whether a store lies in PostgreSQL; else it is a file of SQLite. */
export function isPostgres(database: Kysely<Tables>): boolean {
  return database.getExecutor().adapter instanceof PostgresAdapter;
}

/** Lets nobody else hold a row, or write on it, until the transaction ends; nothing where there is no such row. */
export async function holdRow(
  inside: Transaction<Tables>,
  table: 'books' | 'lessons' | 'students',
  id: string,
): Promise<void> {
  if (!isPostgres(inside)) return;
  await inside.selectFrom(table).select('id').where('id', '=', id).forUpdate().executeTakeFirst();
}

/** Times that a transaction is begun at most. */
const ATTEMPTS = 5;

/** Whether two transactions waited for each other, and this one was given up for the other. Source: PostgreSQL, class 40. */
function isGivenUp(error: unknown): boolean {
  return /^40(?:001|P01)$/.test(String((error as { readonly code?: unknown } | null)?.code));
}

/** Does something all or not at all; once more, from its beginning, where it was given up for somebody else. */
export async function inTransaction<Result>(
  database: Kysely<Tables>,
  work: (inside: Transaction<Tables>) => Promise<Result>,
): Promise<Result> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await database.transaction().execute(work);
    } catch (error) {
      if (!isGivenUp(error) || attempt === ATTEMPTS) throw error;
    }
  }
}

/** What only one server does at a time. */
export type Alone = 'migrations' | 'start' | 'takes';

/** Does something while no other server that shares the store does the same; it may take connections of its own. */
export async function alone<Result>(
  database: Kysely<Tables>,
  what: Alone,
  work: () => Promise<Result>,
): Promise<Result> {
  if (!isPostgres(database)) return work();
  const key = sql`hashtextextended(current_schema() || ${` ${what}`}, 0)`;
  return database.connection().execute(async (held) => {
    await sql`select pg_advisory_lock(${key})`.execute(held);
    try {
      return await work();
    } finally {
      await sql`select pg_advisory_unlock(${key})`.execute(held);
    }
  });
}
