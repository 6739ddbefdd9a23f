/**
 * Private links: each opens the practice of one student to whoever has it, until it is taken back. A student may have
 * several, one for each device or one for a parent.
 */
import { randomUUID } from 'node:crypto';
import type { StoredLink } from '@shedbook/routes';
import type { LanguageTag } from '@shedbook/words';
import type { Kysely } from 'kysely';
import { eraseById } from './erased.ts';
import type { Tables } from './tables.ts';
import { digestOf, newToken } from './token.ts';

/** Whose practice a link opens, and in which language. */
export interface OpenedLink {
  readonly student: string;
  readonly language: LanguageTag;
}

/** The store of private links. */
export interface LinkStore {
  /** Links of a student that hold, the oldest first. */
  list(student: string): Promise<readonly StoredLink[]>;
  /** A new link. @returns it with its secret, which is told only here; null when there is no such student */
  make(
    student: string,
    language: LanguageTag,
  ): Promise<{ readonly link: StoredLink; readonly token: string } | null>;
  /** Takes a link back: it opens nothing any more. @returns whether there was one */
  revoke(id: string): Promise<boolean>;
  /** Whose link it is; null where there is none. */
  ownerOf(id: string): Promise<string | null>;
  /** What a secret opens, which is noted as a use of it; null when it opens nothing. */
  open(token: string): Promise<OpenedLink | null>;
}

/** Milliseconds for which a use is not noted anew: a page asks for some fifty files at once. */
const NOTE_AGAIN_MS = 60_000;

/** A store of links over an open database. @param clock gives the time of a change */
export function createLinkStore(database: Kysely<Tables>, clock: () => Date): LinkStore {
  const now = () => clock().toISOString();
  const onRoster = (student: string) =>
    database
      .selectFrom('students')
      .select('id')
      .where('id', '=', student)
      .where('deleted_at', 'is', null)
      .executeTakeFirst();
  return {
    list: async (student) => {
      const rows = database
        .selectFrom('links')
        .select(['id', 'made_at as madeAt', 'used_at as usedAt'])
        .where('student_id', '=', student);
      return rows.orderBy('made_at').orderBy('id').execute();
    },
    make: async (student, language) => {
      if (!(await onRoster(student))) return null;
      const token = newToken();
      const link = { id: randomUUID(), madeAt: now(), usedAt: null };
      const row = { id: link.id, student_id: student, language, made_at: link.madeAt, used_at: null };
      await database
        .insertInto('links')
        .values({ ...row, token_digest: digestOf(token) })
        .execute();
      return { link, token };
    },
    revoke: async (id) => (await eraseById(database, 'link', [id], now())) > 0,
    ownerOf: async (id) => {
      const found = database.selectFrom('links').select('student_id as student').where('id', '=', id);
      return (await found.executeTakeFirst())?.student ?? null;
    },
    open: async (token) => {
      const found = await database
        .selectFrom('links')
        .innerJoin('students', 'students.id', 'links.student_id')
        .select(['links.id', 'student_id as student', 'language', 'used_at'])
        .where('token_digest', '=', digestOf(token))
        .where('students.deleted_at', 'is', null)
        .executeTakeFirst();
      if (!found) return null;
      const { id, used_at, student, language } = found;
      const at = clock();
      if (used_at === null || at.getTime() - Date.parse(used_at) > NOTE_AGAIN_MS) {
        await database.updateTable('links').set({ used_at: at.toISOString() }).where('id', '=', id).execute();
      }
      return { student, language };
    },
  };
}
