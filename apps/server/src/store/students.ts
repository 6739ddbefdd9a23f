/**
 * Students in the store: a name, a level and what the teacher set, written by the revision that a write was made from,
 * and beside them the rows of their practice. Who is taken off the roster can be brought back, or erased.
 */
import { randomUUID } from 'node:crypto';
import {
  type BinContent,
  type CoachSetting,
  FIRST_TEACHER,
  folded,
  type LogPage,
  type LogRequest,
  type MinorityRequest,
  type Receipt,
  type SaveStudentRequest,
  type StoredStudent,
  type Teacher,
} from '@shedbook/routes';
import type { Kysely, Transaction } from 'kysely';
import { binOf, createTakenInStore, type TakenInStore } from './bin.ts';
import { holdRow, inTransaction } from './engine.ts';
import { eraseById, eraseInside, forgetPractice } from './erased.ts';
import { appendRows, bytesOf, type Practised, passesOf, practisedOf, readRows } from './log-rows.ts';
import { receiptOf } from './receipt.ts';
import { createRosterStore, type RosterStore, studentOf, studentsOf } from './roster.ts';
import type { Tables } from './tables.ts';

/** What became of a write. */
export type StudentOutcome =
  | { readonly kind: 'saved'; readonly student: StoredStudent }
  | { readonly kind: 'conflict'; readonly kept: StoredStudent }
  | { readonly kind: 'missing' };

/** The store of students. */
export interface StudentStore extends TakenInStore, RosterStore {
  /** Everybody on the roster, in the order in which they came. */
  list(): Promise<readonly StoredStudent[]>;
  /** A student on the roster, or null. */
  read(id: string): Promise<StoredStudent | null>;
  /** @param teacher whose student; the first teacher's where it is left out */
  create(name: string, teacher?: string): Promise<StoredStudent>;
  /** Keeps a student, or refuses when they were changed since `request.revision`. */
  save(id: string, request: SaveStudentRequest): Promise<StudentOutcome>;
  /** Notes whether a guardian decides about recordings, and who consented. Null when there is no such student. */
  noteMinority(id: string, request: MinorityRequest): Promise<StoredStudent | null>;
  /** Sets whether the coach proposes anything. Null when there is no such student. */
  setCoach(id: string, setting: CoachSetting): Promise<StoredStudent | null>;
  /** @returns whether there was such a student. */
  remove(id: string): Promise<boolean>;
  /** Brings back a student who was removed; null when there is none. */
  restore(id: string): Promise<StoredStudent | null>;
  /** Rows of a student's practice after one; null when there is no such student. */
  readLog(id: string, after: number): Promise<LogPage | null>;
  /** Every row of a student's practice; none where there is no such student. */
  rows(id: string): Promise<LogPage['rows']>;
  /** What the teacher passed of a student's practice: entries of a log, in order. */
  passes(id: string): Promise<readonly string[]>;
  /** Every lesson and exercise that anybody practised, each once. */
  practised(): Promise<readonly Practised[]>;
  /** Adds rows to a student's practice. @returns how many are new; null when there is no such student */
  takeIn(id: string, request: LogRequest): Promise<number | null>;
  /** Bytes of all that was taken in of a student, thrown away or not. */
  practiceBytes(id: string): Promise<number>;
  /** Forgets a student at once, with everything that was kept of them. @returns what it was; null where there was none */
  erase(id: string): Promise<Receipt | null>;
  /** Everything that lies in the bin and a teacher may bring back, lessons too; the first teacher where none is named. */
  bin(teacher?: Pick<Teacher, 'id' | 'role'>): Promise<BinContent>;
  /** Forgets for good who, and what of their practice, was removed before a time. @returns how many */
  forgetRemovedBefore(time: Date): Promise<number>;
}

/** A student whom nobody has called a minor. */
const ADULT = { is_minor: 0, consent_by: null, consent_at: null } as const;

/** What is made of a student; what is left out stays as it is. */
type StudentChange = Pick<SaveStudentRequest, 'assignments' | 'revision'> & Partial<SaveStudentRequest>;

type Reader = Kysely<Tables> | Transaction<Tables>;

async function read(database: Reader, id: string): Promise<StoredStudent | null> {
  const row = await studentsOf(database).where('id', '=', id).executeTakeFirst();
  return row ? studentOf(row) : null;
}

/** Keeps what was made of a student at a revision, within a transaction. */
export async function saveStudent(
  database: Transaction<Tables>,
  id: string,
  { assignments, revision, ...request }: StudentChange,
  now: string,
): Promise<StudentOutcome> {
  await holdRow(database, 'students', id);
  const kept = await read(database, id);
  if (!kept) return { kind: 'missing' };
  if (kept.revision !== revision) return { kind: 'conflict', kept };
  const { name = kept.name, level = kept.level, setUp = kept.setUp } = request;
  const next = {
    name,
    finds: folded(name),
    assignments: JSON.stringify(assignments),
    level,
    set_up: setUp,
    revision: revision + 1,
    updated_at: now,
  };
  await database.updateTable('students').set(next).where('id', '=', id).execute();
  return {
    kind: 'saved',
    student: { ...kept, name, assignments, level, setUp, revision: revision + 1, updatedAt: now },
  };
}

/** When somebody comes: after everybody who is there, since that is their order, whatever the clock says. */
async function comingTime(database: Kysely<Tables>, now: string, teacher: string): Promise<string> {
  const own = database.selectFrom('students').select('created_at').where('teacher_id', '=', teacher);
  const all = own.where('deleted_at', 'is', null);
  const last = await all.orderBy('created_at', 'desc').limit(1).executeTakeFirst();
  if (!last || last.created_at < now) return now;
  return new Date(Date.parse(last.created_at) + 1).toISOString();
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

/**
 * A store of students over an open database.
 * @param clock gives the time of a change
 * @param binClock gives the time by which what is removed is forgotten
 */
export function createStudentStore(
  database: Kysely<Tables>,
  clock: () => Date,
  binClock: () => Date = clock,
): StudentStore {
  const now = () => clock().toISOString();
  return {
    list: async () => {
      const all = studentsOf(database).orderBy('created_at').orderBy('id');
      return (await all.execute()).map(studentOf);
    },
    read: (id) => read(database, id),
    create: async (name, teacher = FIRST_TEACHER) => {
      const at = await comingTime(database, now(), teacher);
      const row = {
        id: randomUUID(),
        teacher_id: teacher,
        name,
        finds: folded(name),
        assignments: '[]',
        level: 'intermediate' as const,
        set_up: null,
        revision: 1,
        created_at: at,
        updated_at: at,
      };
      await database
        .insertInto('students')
        .values({ ...row, deleted_at: null })
        .execute();
      return studentOf({
        ...row,
        ...ADULT,
        ...{ coach: 'on' as const, coach_until: null },
        deleted_at: null,
        last_row: null,
        row_count: 0,
        last_played_at: null,
        played_at: null,
      });
    },
    save: (id, request) => inTransaction(database, (inside) => saveStudent(inside, id, request, now())),
    noteMinority: (id, { isMinor, consentBy }) =>
      inTransaction(database, async (inside) => {
        await holdRow(inside, 'students', id);
        const kept = await read(inside, id);
        if (!kept) return null;
        const isSame = consentBy !== null && kept.minority.consent?.by === consentBy;
        const consent_at =
          consentBy === null ? null : isSame ? (kept.minority.consent?.notedAt ?? now()) : now();
        await inside
          .updateTable('students')
          .set({ is_minor: isMinor ? 1 : 0, consent_by: consentBy, consent_at, updated_at: now() })
          .where('id', '=', id)
          .execute();
        return read(inside, id);
      }),
    setCoach: async (id, { state, until }) => {
      const change = { coach: state, coach_until: state === 'paused' ? until : null, updated_at: now() };
      await database.updateTable('students').set(change).where('id', '=', id).execute();
      return read(database, id);
    },
    remove: (id) => mark(database, id, binClock().toISOString()),
    restore: async (id) => {
      await mark(database, id, null);
      return read(database, id);
    },
    readLog: async (id, after) => ((await read(database, id)) ? readRows(database, id, after) : null),
    rows: async (id) => {
      const rows: LogPage['rows'][number][] = [];
      if (!(await read(database, id))) return rows;
      for (let after: number | null = 0; after !== null; ) {
        const page: LogPage = await readRows(database, id, after);
        rows.push(...page.rows);
        after = page.next;
      }
      return rows;
    },
    passes: (id) => passesOf(database, id),
    practised: () => practisedOf(database),
    bin: (teacher = { id: FIRST_TEACHER, role: 'head' }) => binOf(database, teacher),
    ...createTakenInStore(database, binClock),
    ...createRosterStore(database),
    practiceBytes: (id) => bytesOf(database, id),
    takeIn: (id, request) =>
      inTransaction(database, async (inside) => {
        await holdRow(inside, 'students', id);
        if (!(await read(inside, id))) return null;
        return appendRows(inside, id, request, now());
      }),
    erase: (id) =>
      inTransaction(database, async (inside) => {
        const at = now();
        await holdRow(inside, 'students', id);
        const receipt = await receiptOf(inside, id, at);
        await eraseInside(inside, 'student', [id], at);
        return receipt;
      }),
    forgetRemovedBefore: async (time) => {
      const before = time.toISOString();
      const old = database.selectFrom('students').select('id').where('deleted_at', '<', before);
      const ids = (await old.execute()).map(({ id }) => id);
      const erased = await eraseById(database, 'student', ids, now());
      return erased + (await forgetPractice(database, before, now()));
    },
  };
}
