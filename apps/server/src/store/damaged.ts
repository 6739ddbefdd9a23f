/** What is kept and cannot be read: a page of the file is broken, or a text is not what was written. */
import { InputError } from '@shedbook/host';
import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** What was asked for is there and cannot be read; the rest of the store can. */
export class DamagedError extends Error {
  override readonly name = 'DamagedError';
}

/**
 * Whether an error of the database says that its file is damaged.
 * Source: SQLite, result codes 10, 11 and 26; PostgreSQL, `io_error` and class XX.
 */
export function isDamage(error: unknown): boolean {
  const code = String((error as { readonly code?: unknown } | null)?.code ?? '');
  return /^(?:SQLITE_(?:CORRUPT|NOTADB|IOERR)|58030$|XX00[12]$)/.test(code);
}

/**
 * Whether an error says that the disk is full.
 * Source: SQLite, result code 13; PostgreSQL, `disk_full`; POSIX, `ENOSPC` and `EDQUOT`.
 */
export function isFull(error: unknown): boolean {
  const code = String((error as { readonly code?: unknown } | null)?.code ?? '');
  return /^(?:SQLITE_FULL|53100|ENOSPC|EDQUOT)$/.test(code);
}

/** What is kept elsewhere cannot be reached now. */
export class AwayError extends InputError {}

/** What says in words that a connection could not be made, or broke off, where there is no code. Source: `pg` 8. */
const BROKEN_OFF =
  /^Connection terminated|^Client has encountered a connection error|^timeout exceeded when trying/;

/**
 * Whether an error says that the database, or what else lies elsewhere, cannot be asked now: it is gone, starts, ends, or has too many who ask.
 * Source: PostgreSQL, class 08, `insufficient_resources` but a full disk, and `operator_intervention`; POSIX, `connect`.
 */
export function isAway(error: unknown): boolean {
  if (error instanceof AwayError) return true;
  const { code, syscall, message } = (error ?? {}) as NodeJS.ErrnoException;
  if (
    /^(?:ECONN|ENOTFOUND|EAI_|ETIMEDOUT|EHOST|ENETUNREACH|EPIPE)|^(?:08...|57P0.|53[23]00)$/.test(code ?? '')
  )
    return true;
  return syscall === 'connect' || (code === undefined && BROKEN_OFF.test(message ?? ''));
}

/** What comes of reading. @throws DamagedError where the file is damaged there */
export async function orDamaged<T>(reading: Promise<T>): Promise<T> {
  try {
    return await reading;
  } catch (error) {
    if (isDamage(error)) throw new DamagedError();
    throw error;
  }
}

type Named = 'lessons' | 'students';
type Direction = 'asc' | 'desc';

/** The ids of a table one after the other from one end, as far as they can be read. */
async function idsFrom(
  database: Kysely<Tables>,
  table: Named,
  direction: Direction,
): Promise<readonly string[]> {
  const ids: string[] = [];
  try {
    for (;;) {
      const last = ids.at(-1);
      const all = database.selectFrom(table).select('id').orderBy('id', direction).limit(1);
      const next = last === undefined ? all : all.where('id', direction === 'asc' ? '>' : '<', last);
      const found = await next.executeTakeFirst();
      if (!found) return ids;
      ids.push(found.id);
    }
  } catch (error) {
    if (isDamage(error)) return ids;
    throw error;
  }
}

/** Every id of a table that can be read, from both ends towards what is damaged. */
export async function idsOf(database: Kysely<Tables>, table: Named): Promise<ReadonlySet<string>> {
  const forwards = await idsFrom(database, table, 'asc');
  return new Set([...forwards, ...(await idsFrom(database, table, 'desc'))]);
}
