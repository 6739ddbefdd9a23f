/**
 * Books in the store: lessons one after another, written by the revision that a write was made from.
 *
 * Conventions: what a teacher says of a book is kept as one text with its checksum, so that damage is noticed; its
 * chapters name lessons, which the table of lessons alone holds. One that was put away says in the same text when.
 */
import { randomUUID } from 'node:crypto';
import {
  type BinContent,
  type BookRequest,
  FIRST_TEACHER,
  type StoredBook,
  type WrittenBook,
} from '@shedbook/routes';
import type { Kysely, Selectable } from 'kysely';
import { checksumOf } from './checksum.ts';
import { holdRow, inTransaction } from './engine.ts';
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
  /** @param teacher who puts it together; the first where it is left out */
  create(book: WrittenBook, teacher?: string): Promise<StoredBook>;
  /** Keeps what a teacher says, or refuses where it was changed since `request.revision`. */
  save(id: string, request: BookRequest): Promise<BookOutcome>;
  /** Puts a book into the bin; its lessons stay. @returns whether there was one */
  remove(id: string): Promise<boolean>;
  /** Brings it back; null where it does not lie in the bin. */
  restore(id: string): Promise<StoredBook | null>;
  /** Erases a book for good, wherever it lies; its lessons stay. @returns whether there was one */
  erase(id: string): Promise<boolean>;
  /** Erases the books that were put away before a time. @returns how many */
  forgetRemovedBefore(time: Date): Promise<number>;
}

/** What is kept of a book: what a teacher says of it, and since when it lies in the bin. */
interface KeptBook extends WrittenBook {
  /** ISO 8601 in UTC; left out of a book that does not lie there. */
  readonly removedAt?: string;
}

type Row = Selectable<Tables['books']>;

/** What a row says; null where it is damaged. */
function contentOf(row: Row): KeptBook | null {
  return checksumOf(row.content) === row.checksum ? (JSON.parse(row.content) as KeptBook) : null;
}

/** The book of a row; null where it is damaged or lies in the bin. */
function bookOf(row: Row): StoredBook | null {
  const content = contentOf(row);
  if (!content || content.removedAt !== undefined) return null;
  return { id: row.id, ...content, revision: row.revision, updatedAt: row.updated_at };
}

/** The books in the bin, last put away first. @param author whose; everybody's where it is null */
export async function booksInBin(
  database: Kysely<Tables>,
  author: string | null,
): Promise<BinContent['books']> {
  const all = database.selectFrom('books').selectAll();
  const rows = await (author === null ? all : all.where('teacher_id', '=', author)).execute();
  return rows
    .flatMap((row) => {
      const { title, removedAt } = contentOf(row) ?? {};
      return title !== undefined && removedAt !== undefined ? [{ id: row.id, title, removedAt }] : [];
    })
    .toSorted((a, b) => b.removedAt.localeCompare(a.removedAt));
}

/** Puts a book into the bin, or takes it out again; null where it does not lie where it is taken from. */
function moveToBin(
  database: Kysely<Tables>,
  id: string,
  removedAt: string | null,
): Promise<StoredBook | null> {
  return database.transaction().execute(async (inside) => {
    const row = await inside.selectFrom('books').selectAll().where('id', '=', id).executeTakeFirst();
    const content = row ? contentOf(row) : null;
    if (!row || !content || (content.removedAt === undefined) === (removedAt === null)) return null;
    const { removedAt: _, ...book } = content;
    const next = kept(removedAt === null ? book : { ...book, removedAt });
    await inside.updateTable('books').set(next).where('id', '=', id).execute();
    return { id, ...book, revision: row.revision, updatedAt: row.updated_at };
  });
}

/** A text with its checksum. */
function kept(book: KeptBook) {
  const content = JSON.stringify(book);
  return { content, checksum: checksumOf(content) };
}

/**
 * A store of books over an open database.
 * @param clock gives the time of a change
 * @param binClock gives the time when a book is put away
 */
export function createBookStore(
  database: Kysely<Tables>,
  clock: () => Date,
  binClock: () => Date = clock,
): BookStore {
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
    create: async (book, teacher = FIRST_TEACHER) => {
      const [id, at] = [randomUUID(), now()];
      const row = { id, teacher_id: teacher, ...kept(book), revision: 1, created_at: at, updated_at: at };
      await database.insertInto('books').values(row).execute();
      return { id, ...book, revision: 1, updatedAt: at };
    },
    save: (id, { revision, ...book }) =>
      inTransaction(database, async (inside): Promise<BookOutcome> => {
        await holdRow(inside, 'books', id);
        const row = await inside.selectFrom('books').selectAll().where('id', '=', id).executeTakeFirst();
        if (!row || contentOf(row)?.removedAt !== undefined) return { kind: 'missing' };
        const before = bookOf(row);
        if (before && before.revision !== revision) return { kind: 'conflict', kept: before };
        const next = { ...kept(book), revision: row.revision + 1, updated_at: now() };
        await inside.updateTable('books').set(next).where('id', '=', id).execute();
        const saved = { id, ...book, revision: next.revision, updatedAt: next.updated_at };
        return { kind: 'saved', book: saved };
      }),
    remove: async (id) => (await moveToBin(database, id, binClock().toISOString())) !== null,
    restore: (id) => moveToBin(database, id, null),
    erase: async (id) => (await eraseById(database, 'book', [id], now())) > 0,
    forgetRemovedBefore: async (time) => {
      const old = (await booksInBin(database, null)).filter(
        ({ removedAt }) => removedAt < time.toISOString(),
      );
      const ids = old.map(({ id }) => id);
      return eraseById(database, 'book', ids, now());
    },
  };
}
