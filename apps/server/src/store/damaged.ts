/** What is kept and cannot be read: a page of the file is broken, or a text is not what was written. */
import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** What was asked for is there and cannot be read; the rest of the store can. */
export class DamagedError extends Error {
  override readonly name = 'DamagedError';
}

/** Whether an error of the database says that its file is damaged. Source: SQLite, result codes 11 and 26. */
export function isDamage(error: unknown): boolean {
  const code = String((error as { readonly code?: unknown } | null)?.code ?? '');
  return /^SQLITE_(?:CORRUPT|NOTADB|IOERR)/.test(code);
}

/** Whether an error says that the disk is full. Source: SQLite, result code 13; POSIX, `ENOSPC` and `EDQUOT`. */
export function isFull(error: unknown): boolean {
  const code = String((error as { readonly code?: unknown } | null)?.code ?? '');
  return /^(?:SQLITE_FULL|ENOSPC|EDQUOT)$/.test(code);
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
