/**
 * Hours in the store: dated lessons of students, written by the revision that a write was made from.
 *
 * Conventions: what is in one is kept as one text with its checksum, so that damage is noticed; only students on the
 * roster have hours that are read.
 */
import type { HourList, HourRequest, SetListRequest, StoredHour, StoredStudent } from '@shedbook/routes';
import type { Kysely, Selectable, Transaction } from 'kysely';
import { checksumOf } from './checksum.ts';
import { holdRow, inTransaction } from './engine.ts';
import { forgiveErased, type HourName, noteErased } from './erased.ts';
import { type StudentOutcome, saveStudent } from './students.ts';
import type { Tables } from './tables.ts';

/** What became of a write. */
export type HourOutcome =
  | { readonly kind: 'saved'; readonly hour: StoredHour }
  | { readonly kind: 'conflict'; readonly kept: StoredHour | null }
  | { readonly kind: 'missing' };

/** What became of setting something. */
export type SetOutcome =
  | { readonly kind: 'saved'; readonly student: StoredStudent; readonly hour: StoredHour }
  | Exclude<StudentOutcome, { readonly kind: 'saved' }>;

/** The store of hours. */
export interface HourStore {
  /** The hours of a student, the last first; null where there is no such student. */
  of(student: string): Promise<HourList | null>;
  /** Keeps what was written of an hour, or refuses where it was changed since `request.revision`. */
  save(name: HourName, request: HourRequest): Promise<HourOutcome>;
  /** Sets a student something and notes it in the hour, both or neither. */
  set(name: HourName, request: SetListRequest): Promise<SetOutcome>;
  /** Erases an hour. @returns whether there was one */
  erase(name: HourName): Promise<boolean>;
}

type Row = Selectable<Tables['hours']>;
type Content = Pick<StoredHour, 'attendance' | 'done' | 'notes' | 'set'>;

const EMPTY: Content = { attendance: 'planned', done: '', notes: '', set: [] };

function hourOf(row: Row): StoredHour | null {
  if (checksumOf(row.content) !== row.checksum) return null;
  const content = JSON.parse(row.content) as Content;
  return { day: row.held_on, ...content, revision: row.revision, updatedAt: row.updated_at };
}

function isThe({ student, day }: HourName) {
  return { student_id: student, held_on: day };
}

async function find(inside: Transaction<Tables>, name: HourName): Promise<Row | null> {
  const found = inside.selectFrom('hours').selectAll();
  return (await found.where((of) => of.and(isThe(name))).executeTakeFirst()) ?? null;
}

async function isOnRoster(inside: Transaction<Tables>, { student }: Pick<HourName, 'student'>) {
  const found = inside.selectFrom('students').select('id').where('id', '=', student);
  return (await found.where('deleted_at', 'is', null).executeTakeFirst()) !== undefined;
}

/** Writes an hour over what was there. */
async function write(
  inside: Transaction<Tables>,
  name: HourName,
  before: Row | null,
  change: Partial<Content>,
  now: string,
): Promise<StoredHour> {
  const { attendance, done, notes, set } = { ...EMPTY, ...(before && hourOf(before)), ...change };
  const content = JSON.stringify({ attendance, done, notes, set });
  const next = {
    ...{ content, checksum: checksumOf(content) },
    ...{ revision: (before?.revision ?? 0) + 1, updated_at: now },
  };
  await inside
    .insertInto('hours')
    .values({ ...isThe(name), ...next })
    .onConflict((on) => on.columns(['student_id', 'held_on']).doUpdateSet(next))
    .execute();
  await forgiveErased(inside, 'hour', name);
  return { day: name.day, attendance, done, notes, set, revision: next.revision, updatedAt: now };
}

async function save(
  inside: Transaction<Tables>,
  name: HourName,
  { revision, set, ...content }: HourRequest,
  now: string,
): Promise<HourOutcome> {
  await holdRow(inside, 'students', name.student);
  if (!(await isOnRoster(inside, name))) return { kind: 'missing' };
  const before = await find(inside, name);
  if ((before?.revision ?? 0) !== revision)
    return { kind: 'conflict', kept: before === null ? null : hourOf(before) };
  return { kind: 'saved', hour: await write(inside, name, before, set ? { ...content, set } : content, now) };
}

/** A store of hours over an open database. @param clock gives the time of a change */
export function createHourStore(database: Kysely<Tables>, clock: () => Date): HourStore {
  const now = () => clock().toISOString();
  return {
    of: (student) =>
      inTransaction(database, async (inside) => {
        if (!(await isOnRoster(inside, { student }))) return null;
        const found = inside.selectFrom('hours').selectAll().where('student_id', '=', student);
        const rows = await found.orderBy('held_on', 'desc').execute();
        const read = rows.map((row) => ({ day: row.held_on, hour: hourOf(row) }));
        return {
          hours: read.flatMap(({ hour }) => hour ?? []),
          damaged: read.flatMap(({ day, hour }) => (hour ? [] : [day])),
        };
      }),
    save: (name, request) => inTransaction(database, (inside) => save(inside, name, request, now())),
    set: (name, { assignments, revision }) =>
      inTransaction(database, async (inside) => {
        const at = now();
        const outcome = await saveStudent(inside, name.student, { assignments, revision }, at);
        if (outcome.kind !== 'saved') return outcome;
        const hour = await write(inside, name, await find(inside, name), { set: assignments }, at);
        return { kind: 'saved', student: outcome.student, hour };
      }),
    erase: (name) =>
      inTransaction(database, async (inside) => {
        const gone = inside.deleteFrom('hours').where((of) => of.and(isThe(name)));
        const { numDeletedRows } = await gone.executeTakeFirst();
        if (numDeletedRows > 0n) await noteErased(inside, 'hour', [name], now());
        return numDeletedRows > 0n;
      }),
  };
}
