/**
 * Lessons in the store: every text a lesson ever had is kept as a step of its history, a write must name the
 * revision it was made from, and nothing is thrown away at once.
 */
import { randomUUID } from 'node:crypto';
import type { HistoryStep, SaveRequest, StoredLesson } from '@shedbook/routes';
import type { Kysely, Transaction } from 'kysely';
import type { Tables } from './tables.ts';

/** What became of a write. */
export type SaveOutcome =
  | { readonly kind: 'saved'; readonly lesson: StoredLesson }
  | { readonly kind: 'conflict'; readonly kept: StoredLesson }
  | { readonly kind: 'missing' };

/** The store of lessons. */
export interface LessonStore {
  /** Lessons that are not thrown away, last changed first. */
  list(): Promise<readonly StoredLesson[]>;
  read(id: string): Promise<StoredLesson | null>;
  create(text: string): Promise<StoredLesson>;
  /** Keeps a text, or refuses when the lesson has been changed since `request.revision`. */
  save(id: string, request: SaveRequest): Promise<SaveOutcome>;
  /** One text of the history, or null. */
  readStep(id: string, step: number): Promise<HistoryStep | null>;
  /** @returns whether there was such a lesson. */
  remove(id: string): Promise<boolean>;
  /** Brings back a lesson that was removed; null when there is none. */
  restore(id: string): Promise<StoredLesson | null>;
  /** Forgets for good what was removed before a time. */
  forgetRemovedBefore(time: Date): Promise<void>;
  /** A fact about the store itself. */
  readNote(key: string): Promise<string | null>;
  writeNote(key: string, value: string): Promise<void>;
  close(): Promise<void>;
}

type Reader = Kysely<Tables> | Transaction<Tables>;

function lessonsOf(database: Reader) {
  return database
    .selectFrom('lessons')
    .innerJoin('steps', (join) =>
      join.onRef('steps.lesson_id', '=', 'lessons.id').onRef('steps.step', '=', 'lessons.step'),
    )
    .select([
      'lessons.id',
      'steps.text',
      'lessons.revision',
      'lessons.step',
      'lessons.last_step as lastStep',
      'lessons.created_at as createdAt',
      'lessons.updated_at as updatedAt',
    ])
    .where('lessons.deleted_at', 'is', null);
}

async function readLesson(database: Reader, id: string): Promise<StoredLesson | null> {
  return (await lessonsOf(database).where('lessons.id', '=', id).executeTakeFirst()) ?? null;
}

/** The step that a save leads to: along the history where its text is there already, else a new one. */
async function stepFor(database: Reader, kept: StoredLesson, request: SaveRequest) {
  const target = { edit: null, undo: kept.step - 1, redo: kept.step + 1 }[request.cause];
  if (target !== null) {
    const there = await textAt(database, kept.id, target);
    if (there === request.text) return { step: target, lastStep: kept.lastStep, isNew: false };
  }
  return { step: kept.step + 1, lastStep: kept.step + 1, isNew: true };
}

async function textAt(database: Reader, id: string, step: number): Promise<string | null> {
  const row = await database
    .selectFrom('steps')
    .select('text')
    .where('lesson_id', '=', id)
    .where('step', '=', step)
    .executeTakeFirst();
  return row?.text ?? null;
}

async function writeStep(
  database: Transaction<Tables>,
  id: string,
  step: number,
  text: string,
): Promise<void> {
  await database.deleteFrom('steps').where('lesson_id', '=', id).where('step', '>=', step).execute();
  await database.insertInto('steps').values({ lesson_id: id, step, text }).execute();
}

async function save(
  database: Transaction<Tables>,
  id: string,
  request: SaveRequest,
  now: string,
): Promise<SaveOutcome> {
  const kept = await readLesson(database, id);
  if (!kept) return { kind: 'missing' };
  if (kept.revision !== request.revision) return { kind: 'conflict', kept };
  const { step, lastStep, isNew } = await stepFor(database, kept, request);
  if (isNew) await writeStep(database, id, step, request.text);
  const revision = kept.revision + 1;
  await database
    .updateTable('lessons')
    .set({ revision, step, last_step: lastStep, updated_at: now })
    .where('id', '=', id)
    .execute();
  return { kind: 'saved', lesson: { ...kept, text: request.text, revision, step, lastStep, updatedAt: now } };
}

async function create(database: Transaction<Tables>, text: string, now: string): Promise<StoredLesson> {
  const id = randomUUID();
  const row = { id, revision: 1, step: 0, last_step: 0, created_at: now, updated_at: now, deleted_at: null };
  await database.insertInto('lessons').values(row).execute();
  await database.insertInto('steps').values({ lesson_id: id, step: 0, text }).execute();
  return { id, text, revision: 1, step: 0, lastStep: 0, createdAt: now, updatedAt: now };
}

async function mark(database: Kysely<Tables>, id: string, deletedAt: string | null): Promise<boolean> {
  const result = await database
    .updateTable('lessons')
    .set({ deleted_at: deletedAt })
    .where('id', '=', id)
    .where('deleted_at', deletedAt === null ? 'is not' : 'is', null)
    .executeTakeFirst();
  return result.numUpdatedRows > 0n;
}

/** A store of lessons over an open database. @param clock gives the time of a change. */
export function createLessonStore(database: Kysely<Tables>, clock: () => Date): LessonStore {
  const now = () => clock().toISOString();
  return {
    list: () => lessonsOf(database).orderBy('lessons.updated_at', 'desc').orderBy('lessons.id').execute(),
    read: (id) => readLesson(database, id),
    create: (text) => database.transaction().execute((inside) => create(inside, text, now())),
    save: (id, request) => database.transaction().execute((inside) => save(inside, id, request, now())),
    readStep: async (id, step) => {
      const text = await textAt(database, id, step);
      return text === null ? null : { step, text };
    },
    remove: (id) => mark(database, id, now()),
    restore: async (id) => {
      await mark(database, id, null);
      return readLesson(database, id);
    },
    forgetRemovedBefore: async (time) => {
      await database.deleteFrom('lessons').where('deleted_at', '<', time.toISOString()).execute();
    },
    readNote: async (key) => {
      const row = await database
        .selectFrom('notes')
        .select('value')
        .where('key', '=', key)
        .executeTakeFirst();
      return row?.value ?? null;
    },
    writeNote: async (key, value) => {
      await database
        .insertInto('notes')
        .values({ key, value })
        .onConflict((conflict) => conflict.column('key').doUpdateSet({ value }))
        .execute();
    },
    close: () => database.destroy(),
  };
}
