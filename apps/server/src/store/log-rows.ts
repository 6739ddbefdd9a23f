/**
 * What was taken in of students' practice: rows that are only ever added. A later version of an entry is another row;
 * whoever reads joins them, and what cannot be read stays as it came.
 */
import { jsonIn } from '@shedbook/core';
import type { LogPage, LogRequest } from '@shedbook/routes';
import { type Kysely, sql, type Transaction } from 'kysely';
import { checksumOf, isAsWritten } from './checksum.ts';
import type { Tables } from './tables.ts';

/** Rows that are read at once. */
const PAGE_ROWS = 1000;

/** What a row is found again by: the entry that it is of, and when the student began to play it, in seconds since 1970. */
function marksOf(text: string): { readonly entry_id: string | null; readonly played_at: number | null } {
  const { id, removed, startedAt, heardBy } = (jsonIn(text) ?? {}) as Readonly<Record<string, unknown>>;
  const named = removed ?? id;
  const isPlayed = typeof startedAt === 'string' && heardBy !== 'teacher';
  const playedMs = isPlayed ? Date.parse(startedAt) : Number.NaN;
  return {
    entry_id: typeof named === 'string' ? named : null,
    played_at: Number.isFinite(playedMs) ? Math.floor(playedMs / 1000) : null,
  };
}

/** Adds rows; those that are there already, letter for letter, are left out, and those that were taken out come back. @returns how many are new */
export async function appendRows(
  database: Transaction<Tables>,
  student: string,
  { version, rows }: LogRequest,
  now: string,
): Promise<number> {
  let added = 0;
  for (const text of rows) {
    const marks = marksOf(text);
    const there = await database
      .selectFrom('log_rows')
      .select(['row', 'removed_at'])
      .where('student_id', '=', student)
      .where('entry_id', 'is', marks.entry_id)
      .where('version', '=', version)
      .where('text', '=', text)
      .executeTakeFirst();
    if (there?.removed_at === null) continue;
    if (there) {
      await database
        .updateTable('log_rows')
        .set({ removed_at: null, taken_at: now })
        .where('row', '=', there.row)
        .execute();
      added += 1;
      continue;
    }
    const row = {
      ...{ student_id: student, version, ...marks, text, checksum: checksumOf(text) },
      ...{ taken_at: now, removed_at: null },
    };
    await database.insertInto('log_rows').values(row).execute();
    added += 1;
  }
  return added;
}

/** What a row of practice is of: lasting names of a lesson and, unless its groove alone, of an exercise. */
export interface Practised {
  readonly lesson: string;
  readonly exercise: string | null;
}

/** Every lesson and exercise that anybody practised, each once; rows that cannot be read name none. */
export async function practisedOf(database: Kysely<Tables>): Promise<readonly Practised[]> {
  const readable = database
    .selectFrom('log_rows')
    .where('removed_at', 'is', null)
    .where(sql<boolean>`json_valid(text)`);
  const named = readable.where(sql`json_extract(text, '$.lesson')`, 'is not', null);
  return named
    .select([
      sql<string>`json_extract(text, '$.lesson')`.as('lesson'),
      sql<string | null>`json_extract(text, '$.exercise')`.as('exercise'),
    ])
    .distinct()
    .execute();
}

/** What the teacher passed of a student's practice: entries as they were written, in order. */
export async function passesOf(database: Kysely<Tables>, student: string): Promise<readonly string[]> {
  const rows = await database
    .selectFrom('log_rows')
    .select('text')
    .where('student_id', '=', student)
    .where('removed_at', 'is', null)
    .where(sql<boolean>`json_valid(text)`)
    .where(sql`json_extract(text, '$.heardBy')`, '=', 'teacher')
    .orderBy('row')
    .execute();
  return rows.map(({ text }) => text);
}

/** Whether a row says that it is the teacher's word. */
export function isTeachersWord(text: string): boolean {
  try {
    return (JSON.parse(text) as { readonly heardBy?: unknown } | null)?.heardBy === 'teacher';
  } catch {
    return false;
  }
}

/** The rows of a student after one, as many as are read at once. */
export async function readRows(database: Kysely<Tables>, student: string, after: number): Promise<LogPage> {
  const rows = await database
    .selectFrom('log_rows')
    .select(['row', 'version', 'text', 'checksum', 'taken_at'])
    .where('student_id', '=', student)
    .where('removed_at', 'is', null)
    .where('row', '>', after)
    .orderBy('row')
    .limit(PAGE_ROWS)
    .execute();
  return {
    rows: rows.map(({ row, version, text, checksum, taken_at }) => ({
      ...{ row, version, text, takenAt: taken_at },
      isSound: isAsWritten(text, checksum),
    })),
    next: rows.length < PAGE_ROWS ? null : (rows.at(-1)?.row ?? null),
  };
}
