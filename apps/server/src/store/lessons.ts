/**
 * Lessons in the store: every text a lesson ever had is kept as a step of its history, a write must name the
 * revision it was made from, and nothing is thrown away at once.
 */
import { randomUUID } from 'node:crypto';
import {
  type DamagedLesson,
  FIRST_TEACHER,
  type HistoryStep,
  type LessonFiling,
  type SaveRequest,
  type StoredLesson,
} from '@shedbook/routes';
import type { Kysely, Transaction } from 'kysely';
import { checksumOf, isAsWritten } from './checksum.ts';
import { DamagedError, idsOf, orDamaged } from './damaged.ts';
import { holdRow, inTransaction } from './engine.ts';
import { eraseById } from './erased.ts';
import {
  fileLesson,
  keepSummary,
  listShelf,
  namedAsSummedUp,
  type ShelvedLesson,
  summaryOf,
} from './shelf.ts';
import { type Summary, type SumUp, sumUpAtOnce } from './summary.ts';
import type { Tables } from './tables.ts';

/** What became of a write. */
export type SaveOutcome =
  | { readonly kind: 'saved'; readonly lesson: StoredLesson }
  | { readonly kind: 'conflict'; readonly kept: StoredLesson }
  | { readonly kind: 'missing' };

/** The store of lessons. */
export interface LessonStore {
  /** Lessons that are not thrown away and can be read, last changed first. */
  list(): Promise<readonly StoredLesson[]>;
  /** The same as a list shows them, without their texts. */
  shelf(): Promise<readonly ShelvedLesson[]>;
  /** What a list shows of a lesson as it is now. */
  summary(lesson: StoredLesson): Promise<Summary>;
  /** Files a lesson. @returns whether there was such a lesson */
  file(id: string, filing: LessonFiling): Promise<boolean>;
  /** A lesson, or null. @throws DamagedError when what is kept of it is no longer what was written */
  read(id: string): Promise<StoredLesson | null>;
  /** Lessons that are there and cannot be read, by what they were called when they could. */
  damaged(): Promise<readonly DamagedLesson[]>;
  /** @param teacher who writes it; the first where it is left out */
  create(text: string, teacher?: string): Promise<StoredLesson>;
  /** Keeps a text, or refuses when the lesson has been changed since `request.revision`. */
  save(id: string, request: SaveRequest): Promise<SaveOutcome>;
  /** One text of the history, or null. */
  readStep(id: string, step: number): Promise<HistoryStep | null>;
  /** @returns whether there was such a lesson. */
  remove(id: string): Promise<boolean>;
  /** Brings back a lesson that was removed; null when there is none. */
  restore(id: string): Promise<StoredLesson | null>;
  /** Forgets a lesson at once, with its history. @returns whether there was one */
  erase(id: string): Promise<boolean>;
  /** Forgets for good what was removed before a time. @returns how many */
  forgetRemovedBefore(time: Date): Promise<number>;
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
      'steps.checksum',
      'lessons.revision',
      'lessons.step',
      'lessons.last_step as lastStep',
      'lessons.created_at as createdAt',
      'lessons.updated_at as updatedAt',
    ])
    .where('lessons.deleted_at', 'is', null);
}

async function readLesson(database: Reader, id: string): Promise<StoredLesson | null> {
  const row = await orDamaged(lessonsOf(database).where('lessons.id', '=', id).executeTakeFirst());
  if (!row) return null;
  const { checksum, ...lesson } = row;
  if (!isAsWritten(lesson.text, checksum)) throw new DamagedError();
  return lesson;
}

/** Every lesson, one by one: those that can be read, and the ids of those that cannot. */
async function readEach(database: Kysely<Tables>) {
  const damaged: string[] = [];
  const lessons: StoredLesson[] = [];
  for (const id of await idsOf(database, 'lessons')) {
    try {
      const lesson = await readLesson(database, id);
      if (lesson) lessons.push(lesson);
    } catch (error) {
      if (!(error instanceof DamagedError)) throw error;
      damaged.push(id);
    }
  }
  return { lessons: lessons.toSorted(lastChangedFirst), damaged };
}

function lastChangedFirst(a: StoredLesson, b: StoredLesson): number {
  if (a.updatedAt !== b.updatedAt) return a.updatedAt < b.updatedAt ? 1 : -1;
  return a.id < b.id ? -1 : 1;
}

/** Every lesson that can be read: all at once, and one by one where that cannot be done. */
async function listLessons(database: Kysely<Tables>): Promise<readonly StoredLesson[]> {
  const all = lessonsOf(database).orderBy('lessons.updated_at', 'desc').orderBy('lessons.id');
  try {
    const rows = await orDamaged(all.execute());
    return rows.flatMap(({ checksum, ...lesson }) => (isAsWritten(lesson.text, checksum) ? [lesson] : []));
  } catch (error) {
    if (!(error instanceof DamagedError)) throw error;
    return (await readEach(database)).lessons;
  }
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
  const found = database.selectFrom('steps').select(['text', 'checksum']).where('lesson_id', '=', id);
  const row = await orDamaged(found.where('step', '=', step).executeTakeFirst());
  if (!row) return null;
  if (!isAsWritten(row.text, row.checksum)) throw new DamagedError();
  return row.text;
}

async function writeStep(
  database: Transaction<Tables>,
  id: string,
  step: number,
  text: string,
): Promise<void> {
  await database.deleteFrom('steps').where('lesson_id', '=', id).where('step', '>=', step).execute();
  await database
    .insertInto('steps')
    .values({ lesson_id: id, step, text, checksum: checksumOf(text) })
    .execute();
}

async function save(
  database: Transaction<Tables>,
  id: string,
  request: SaveRequest,
  now: string,
): Promise<SaveOutcome> {
  await holdRow(database, 'lessons', id);
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

async function create(
  database: Transaction<Tables>,
  { id, text, teacher }: { readonly id: string; readonly text: string; readonly teacher: string },
  now: string,
): Promise<StoredLesson> {
  const times = { created_at: now, updated_at: now, deleted_at: null };
  const row = {
    id,
    teacher_id: teacher,
    revision: 1,
    step: 0,
    last_step: 0,
    ...times,
    level: null,
    archived_at: null,
  };
  await database.insertInto('lessons').values(row).execute();
  await database
    .insertInto('steps')
    .values({ lesson_id: id, step: 0, text, checksum: checksumOf(text) })
    .execute();
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

/**
 * A store of lessons over an open database.
 * @param clock gives the time of a change
 * @param binClock gives the time by which what is removed is forgotten
 * @param sumUp reads a text for lists
 */
export function createLessonStore(
  database: Kysely<Tables>,
  clock: () => Date,
  binClock: () => Date = clock,
  sumUp: SumUp = sumUpAtOnce,
): LessonStore {
  const now = () => clock().toISOString();
  return {
    list: () => listLessons(database),
    shelf: () => listShelf(database, (id) => readLesson(database, id), sumUp),
    summary: (lesson) => summaryOf(database, lesson, sumUp),
    file: (id, filing) => fileLesson(database, id, filing, now()),
    damaged: async () => namedAsSummedUp(database, (await readEach(database)).damaged),
    read: (id) => readLesson(database, id),
    create: async (text, teacher = FIRST_TEACHER) => {
      // Before anything is written, so that nobody waits for the store meanwhile.
      const id = randomUUID();
      const summary = await sumUp(text, id);
      return inTransaction(database, async (inside) => {
        const lesson = await create(inside, { id, text, teacher }, now());
        await keepSummary(inside, lesson, summary);
        return lesson;
      });
    },
    save: (id, request) => inTransaction(database, (inside) => save(inside, id, request, now())),
    readStep: async (id, step) => {
      const text = await textAt(database, id, step);
      return text === null ? null : { step, text };
    },
    remove: (id) => mark(database, id, binClock().toISOString()),
    restore: async (id) => {
      await mark(database, id, null);
      return readLesson(database, id);
    },
    erase: async (id) => (await eraseById(database, 'lesson', [id], now())) > 0,
    forgetRemovedBefore: async (time) => {
      const old = database.selectFrom('lessons').select('id').where('deleted_at', '<', time.toISOString());
      const ids = (await old.execute()).map(({ id }) => id);
      return eraseById(database, 'lesson', ids, now());
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
