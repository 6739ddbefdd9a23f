/**
 * Students in the store: a name, a level, a practice log as it was taken in, and what the teacher set. A write must name the
 * revision it was made from; who is taken off the roster can be brought back.
 */
import { randomUUID } from 'node:crypto';
import type { SaveStudentRequest, StoredAssignment, StoredStudent } from '@shedbook/routes';
import type { Kysely, Selectable, Transaction } from 'kysely';
import type { Tables } from './tables.ts';

/** What became of a write. */
export type StudentOutcome =
  | { readonly kind: 'saved'; readonly student: StoredStudent }
  | { readonly kind: 'conflict'; readonly kept: StoredStudent }
  | { readonly kind: 'missing' };

/** The store of students. */
export interface StudentStore {
  /** Everybody on the roster, in the order in which they came. */
  list(): Promise<readonly StoredStudent[]>;
  create(name: string): Promise<StoredStudent>;
  /** Keeps a student, or refuses when they were changed since `request.revision`. */
  save(id: string, request: SaveStudentRequest): Promise<StudentOutcome>;
  /** @returns whether there was such a student. */
  remove(id: string): Promise<boolean>;
  /** Brings back a student who was removed; null when there is none. */
  restore(id: string): Promise<StoredStudent | null>;
  /** Forgets for good who was removed before a time. */
  forgetRemovedBefore(time: Date): Promise<void>;
}

type Reader = Kysely<Tables> | Transaction<Tables>;

function studentOf(row: Selectable<Tables['students']>): StoredStudent {
  return {
    id: row.id,
    name: row.name,
    log: row.log,
    assignments: JSON.parse(row.assignments) as readonly StoredAssignment[],
    level: row.level,
    revision: row.revision,
    createdAt: row.created_at,
    updatedAt: row.updated_at,
  };
}

async function read(database: Reader, id: string): Promise<StoredStudent | null> {
  const row = await database
    .selectFrom('students')
    .selectAll()
    .where('id', '=', id)
    .where('deleted_at', 'is', null)
    .executeTakeFirst();
  return row ? studentOf(row) : null;
}

async function save(
  database: Transaction<Tables>,
  id: string,
  { name, log, assignments, revision, ...request }: SaveStudentRequest,
  now: string,
): Promise<StudentOutcome> {
  const kept = await read(database, id);
  if (!kept) return { kind: 'missing' };
  if (kept.revision !== revision) return { kind: 'conflict', kept };
  const level = request.level ?? kept.level;
  const next = {
    name,
    log,
    assignments: JSON.stringify(assignments),
    level,
    revision: revision + 1,
    updated_at: now,
  };
  await database.updateTable('students').set(next).where('id', '=', id).execute();
  return {
    kind: 'saved',
    student: { ...kept, name, log, assignments, level, revision: revision + 1, updatedAt: now },
  };
}

async function mark(database: Kysely<Tables>, id: string, deletedAt: string | null): Promise<boolean> {
  const result = await database
    .updateTable('students')
    .set({ deleted_at: deletedAt })
    .where('id', '=', id)
    .where('deleted_at', deletedAt === null ? 'is not' : 'is', null)
    .executeTakeFirst();
  return result.numUpdatedRows > 0n;
}

/** A store of students over an open database. @param clock gives the time of a change. */
export function createStudentStore(database: Kysely<Tables>, clock: () => Date): StudentStore {
  const now = () => clock().toISOString();
  return {
    list: async () => {
      const all = database.selectFrom('students').selectAll().where('deleted_at', 'is', null);
      return (await all.orderBy('created_at').orderBy('id').execute()).map(studentOf);
    },
    create: async (name) => {
      const at = now();
      const row = {
        id: randomUUID(),
        name,
        log: '',
        assignments: '[]',
        level: 'intermediate' as const,
        revision: 1,
        created_at: at,
        updated_at: at,
      };
      await database
        .insertInto('students')
        .values({ ...row, deleted_at: null })
        .execute();
      return studentOf({ ...row, deleted_at: null });
    },
    save: (id, request) => database.transaction().execute((inside) => save(inside, id, request, now())),
    remove: (id) => mark(database, id, now()),
    restore: async (id) => {
      await mark(database, id, null);
      return read(database, id);
    },
    forgetRemovedBefore: async (time) => {
      await database.deleteFrom('students').where('deleted_at', '<', time.toISOString()).execute();
    },
  };
}
