/**
 * What was taken in of students' practice: rows that are only ever added. A later version of an entry is another row;
 * whoever reads joins them, and what cannot be read stays as it came.
 */
import { jsonIn } from '@shedbook/core';
import type { LogPage, LogRequest } from '@shedbook/routes';
import { type Insertable, type Kysely, sql, type Transaction } from 'kysely';
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

/** A row that is there. */
interface Known {
  readonly row: number;
  readonly isTakenOut: boolean;
}

/** Rows of one entry of a student, by the checksums of their texts. */
async function knownRows(
  database: Transaction<Tables>,
  of: { readonly student: string; readonly version: number; readonly entry: string | null },
): Promise<ReadonlyMap<string, Known>> {
  const rows = await database
    .selectFrom('log_rows')
    .select(['row', 'removed_at', 'checksum'])
    // of rows that came before there were checksums
    .select((of) => of.case().when('checksum', 'is', null).then(of.ref('text')).end().as('text'))
    .where('student_id', '=', of.student)
    .where('entry_id', of.entry === null ? 'is' : '=', of.entry)
    .where('version', '=', of.version)
    .execute();
  return new Map(
    rows.map(({ row, removed_at, checksum, text }) => [
      checksum ?? checksumOf(text ?? ''),
      { row, isTakenOut: removed_at !== null },
    ]),
  );
}

/** Whether a row says something letter for letter: one that changed on the disk does not. */
async function says(database: Transaction<Tables>, row: number, text: string): Promise<boolean> {
  const same = database.selectFrom('log_rows').select('row').where('row', '=', row).where('text', '=', text);
  return (await same.executeTakeFirst()) !== undefined;
}

/** Rows that are written at once. */
const WRITTEN_ROWS = 100;

/**
 * Adds rows; those that are there already, letter for letter, are left out, and those that were taken out come back. What
 * is there of an entry is read once, so that thousands of rows of one take no longer than those of many.
 * @returns how many are new
 */
export async function appendRows(
  database: Transaction<Tables>,
  student: string,
  { version, rows }: LogRequest,
  now: string,
): Promise<number> {
  const known = new Map<string | null, ReadonlyMap<string, Known>>();
  const knownOf = async (entry: string | null) => {
    const found = known.get(entry) ?? (await knownRows(database, { student, version, entry }));
    known.set(entry, found);
    return found;
  };
  const fresh: Insertable<Tables['log_rows']>[] = [];
  const back: number[] = [];
  for (const text of new Set(rows)) {
    const marks = marksOf(text);
    const checksum = checksumOf(text);
    const there = (await knownOf(marks.entry_id)).get(checksum);
    if (there && (await says(database, there.row, text))) {
      if (there.isTakenOut) back.push(there.row);
      continue;
    }
    fresh.push({
      ...{ student_id: student, version, ...marks, text, checksum },
      ...{ taken_at: now, removed_at: null },
    });
  }
  for (const row of back)
    await database
      .updateTable('log_rows')
      .set({ removed_at: null, taken_at: now })
      .where('row', '=', row)
      .execute();
  for (let from = 0; from < fresh.length; from += WRITTEN_ROWS)
    await database
      .insertInto('log_rows')
      .values(fresh.slice(from, from + WRITTEN_ROWS))
      .execute();
  return fresh.length + back.length;
}

/** Bytes of all rows of a student. Source: SQLite, `octet_length`, which reads no text. */
export async function bytesOf(database: Kysely<Tables>, student: string): Promise<number> {
  const sum = database.selectFrom('log_rows').select(sql<number | null>`sum(octet_length(text))`.as('bytes'));
  return (await sum.where('student_id', '=', student).executeTakeFirst())?.bytes ?? 0;
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
