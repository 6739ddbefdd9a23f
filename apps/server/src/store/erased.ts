/**
 * What was erased for good, noted so that a backup from before does not bring it back.
 *
 * Conventions: a note is made in the transaction that erases; it holds ids and a time, no name and no content.
 */
import { FIRST_TEACHER } from '@shedbook/routes';
import { type Kysely, sql, type Transaction } from 'kysely';
import type { Database } from 'libsql';
import { inTransaction } from './engine.ts';
import type { ErasedKind, Tables } from './tables.ts';
import type { TakeName } from './take-files.ts';

/** Practice of a student that was taken in at a time. */
export interface TakenIn {
  readonly student: string;
  readonly takenAt: string;
}

/** The hour of a student on a day. */
export interface HourName {
  readonly student: string;
  /** ISO 8601, without a time. */
  readonly day: string;
}

type Marked = string | HourName | TakeName | TakenIn;

/** How something is named in a note. */
function markOf(marked: Marked): string {
  if (typeof marked === 'string') return marked;
  if ('day' in marked) return JSON.stringify([marked.student, marked.day]);
  return JSON.stringify([marked.student, 'take' in marked ? marked.take : marked.takenAt]);
}

/** Notes that something was erased. */
export async function noteErased(
  database: Transaction<Tables>,
  kind: ErasedKind,
  marked: readonly Marked[],
  now: string,
): Promise<void> {
  for (const each of marked)
    await database
      .insertInto('erased')
      .values({ kind, id: markOf(each), erased_at: now })
      .onConflict((on) => on.columns(['kind', 'id']).doUpdateSet({ erased_at: now }))
      .execute();
}

/** Takes a note back, since what was erased came anew. */
export async function forgiveErased(
  database: Transaction<Tables>,
  kind: ErasedKind,
  marked: Marked,
): Promise<void> {
  await database.deleteFrom('erased').where('kind', '=', kind).where('id', '=', markOf(marked)).execute();
}

/** The table that holds each kind of thing with an id of its own. */
const TABLE_OF = {
  book: 'books',
  lesson: 'lessons',
  student: 'students',
  link: 'links',
  demonstration: 'demonstrations',
  teacher: 'teachers',
} as const;

/** Erases what has these ids, with everything that belongs to it, and notes it. @returns how many there were */
export async function eraseInside(
  inside: Transaction<Tables>,
  kind: keyof typeof TABLE_OF,
  ids: readonly string[],
  now: string,
): Promise<number> {
  const erased: string[] = [];
  for (const id of ids) {
    const { numDeletedRows } = await inside
      .deleteFrom(TABLE_OF[kind])
      .where('id', '=', id)
      .executeTakeFirst();
    if (numDeletedRows > 0n) erased.push(id);
  }
  await noteErased(inside, kind, erased, now);
  return erased.length;
}

/** The same in a transaction of its own. @returns how many there were */
export function eraseById(
  database: Kysely<Tables>,
  kind: keyof typeof TABLE_OF,
  ids: readonly string[],
  now: string,
): Promise<number> {
  return inTransaction(database, (inside) => eraseInside(inside, kind, ids, now));
}

/** Erases practice that was taken out before a time, and notes it. @returns how many rows */
export function forgetPractice(database: Kysely<Tables>, before: string, now: string): Promise<number> {
  return inTransaction(database, async (inside) => {
    const taken = await inside
      .selectFrom('log_rows')
      .select(['student_id as student', 'taken_at as takenAt'])
      .where('removed_at', '<', before)
      .distinct()
      .execute();
    const { numDeletedRows } = await inside
      .deleteFrom('log_rows')
      .where('removed_at', '<', before)
      .executeTakeFirst();
    await noteErased(inside, 'practice', taken, now);
    return Number(numDeletedRows);
  });
}

/** What a backup knows of teachers who are not here: it is the first teacher's, and nobody signs in as one of them. */
const OF_NOBODY: readonly string[] = [
  ...['students', 'lessons', 'books'].map(
    (table) =>
      `update ${table} set teacher_id = '${FIRST_TEACHER}' where teacher_id not in (select id from teachers)`,
  ),
  ...['passphrases', 'invitations', 'passkeys', 'sessions'].map(
    (table) => `delete from ${table} where teacher_id not in (select id from teachers)`,
  ),
];

/** Statements that erase once more what is noted. @param mark function that makes the name of a note of two values */
function eraseNoted(mark: string): readonly string[] {
  return [
    "delete from books where id in (select id from erased where kind = 'book')",
    "delete from students where id in (select id from erased where kind = 'student')",
    "delete from lessons where id in (select id from erased where kind = 'lesson')",
    "delete from demonstrations where id in (select id from erased where kind = 'demonstration')",
    "delete from teachers where id in (select id from erased where kind = 'teacher')",
    "delete from links where id in (select id from erased where kind = 'link')",
    `delete from takes where ${mark}(student_id, take_id) in (select id from erased where kind = 'take')`,
    `delete from hours where ${mark}(student_id, held_on) in (select id from erased where kind = 'hour')`,
    `delete from log_rows where ${mark}(student_id, taken_at) in (select id from erased where kind = 'practice')`,
  ];
}

/** Erases once more what notes say was erased, within a transaction of SQLite. @returns how many things there were */
export function eraseAgain(database: Database): number {
  const erased = eraseNoted('json_array').reduce(
    (sum, each) => sum + database.prepare(each).run().changes,
    0,
  );
  for (const each of OF_NOBODY) database.exec(each);
  return erased;
}

/** The same within a transaction of PostgreSQL. @returns how many things there were */
export async function eraseAgainIn(inside: Transaction<Tables>): Promise<number> {
  let erased = 0;
  for (const each of eraseNoted('mark_of'))
    erased += Number((await sql.raw(each).execute(inside)).numAffectedRows ?? 0n);
  for (const each of OF_NOBODY) await sql.raw(each).execute(inside);
  return erased;
}
