/**
 * Books in the store: lessons one after another, written by the revision that a write was made from.
 *
 * Conventions: what a teacher says of a book is kept as one text with its checksum, so that damage is noticed; its
 * chapters name lessons, which the table of lessons alone holds.
 */
import { randomUUID } from 'node:crypto';
import type { BookRequest, StoredBook, WrittenBook } from '@shedbook/routes';
import type { Kysely, Selectable } from 'kysely';
import { checksumOf } from './checksum.ts';
import { eraseById } from './erased.ts';
import type { Tables } from './tables.ts';

/** What became of a write. */
export type BookOutcome =
  | { readonly kind: 'saved'; readonly book: StoredBook }
  | { readonly kind: 'conflict'; readonly kept: StoredBook }
  | { readonly kind: 'missing' };

/** The store of books. */
export interface BookStore {
  /** All that can be read, the last changed first. */
  list(): Promise<readonly StoredBook[]>;
  /** A book; null where there is none with this id, or it cannot be read. */
  read(id: string): Promise<StoredBook | null>;
  create(book: WrittenBook): Promise<StoredBook>;
  /** Keeps what a teacher says, or refuses where it was changed since `request.revision`. */
  save(id: string, request: BookRequest): Promise<BookOutcome>;
  /** Erases a book; its lessons stay. @returns whether there was one */
  erase(id: string): Promise<boolean>;
}

function bookOf(row: Selectable<Tables['books']>): StoredBook | null {
  if (checksumOf(row.content) !== row.checksum) return null;
  const content = JSON.parse(row.content) as WrittenBook;
  return { id: row.id, ...content, revision: row.revision, updatedAt: row.updated_at };
}

/** A text with its checksum. */
function kept(book: WrittenBook) {
  const content = JSON.stringify(book);
  return { content, checksum: checksumOf(content) };
}

/** A store of books over an open database. @param clock gives the time of a change */
export function createBookStore(database: Kysely<Tables>, clock: () => Date): BookStore {
  const now = () => clock().toISOString();
  return {
    list: async () => {
      const rows = await database.selectFrom('books').selectAll().orderBy('updated_at', 'desc').execute();
      return rows.flatMap((row) => bookOf(row) ?? []);
    },
    read: async (id) => {
      const row = await database.selectFrom('books').selectAll().where('id', '=', id).executeTakeFirst();
      return row ? bookOf(row) : null;
    },
    create: async (book) => {
      const [id, at] = [randomUUID(), now()];
      const row = { id, ...kept(book), revision: 1, created_at: at, updated_at: at };
      await database.insertInto('books').values(row).execute();
      return { id, ...book, revision: 1, updatedAt: at };
    },
    save: (id, { revision, ...book }) =>
      database.transaction().execute(async (inside): Promise<BookOutcome> => {
        const row = await inside.selectFrom('books').selectAll().where('id', '=', id).executeTakeFirst();
        if (!row) return { kind: 'missing' };
        const before = bookOf(row);
        if (before && before.revision !== revision) return { kind: 'conflict', kept: before };
        const next = { ...kept(book), revision: row.revision + 1, updated_at: now() };
        await inside.updateTable('books').set(next).where('id', '=', id).execute();
        const saved = { id, ...book, revision: next.revision, updatedAt: next.updated_at };
        return { kind: 'saved', book: saved };
      }),
    erase: async (id) => (await eraseById(database, 'book', [id], now())) > 0,
  };
}
