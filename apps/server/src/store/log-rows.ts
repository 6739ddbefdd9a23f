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

/**
 * What a row is found again by: the entry that it is of, and when the student began to play it, in seconds since 1970. Under
 * a clock that was ahead, that is when it was taken in: nobody has played on a day that is still to come.
 */
function marksOf(
  text: string,
  takenAt: string,
): { readonly entry_id: string | null; readonly played_at: number | null } {
  const { id, removed, startedAt, heardBy } = (jsonIn(text) ?? {}) as Readonly<Record<string, unknown>>;
  const named = removed ?? id;
  const isPlayed = typeof startedAt === 'string' && heardBy !== 'teacher';
  const playedMs = isPlayed ? Date.parse(startedAt) : Number.NaN;
  return {
    entry_id: typeof named === 'string' ? named : null,
    played_at: Number.isFinite(playedMs) ? Math.floor(Math.min(playedMs, Date.parse(takenAt)) / 1000) : null,
  };
}

/** A row that is there. */
interface Known {
  readonly row: number;
  readonly isTakenOut: boolean;
}

/** Rows of entries, by the entry and the checksum of the text. */
type KnownRows = ReadonlyMap<string | null, ReadonlyMap<string, Known>>;

/** Entries, and rows, that are looked for at once. */
const AT_ONCE = 500;

/** Rows that are written at once. */
const WRITTEN_ROWS = 100;

function* partsOf<Each>(all: readonly Each[], size: number): Generator<readonly Each[]> {
  for (let from = 0; from < all.length; from += size) yield all.slice(from, from + size);
}

/** Rows of some entries of a student. */
async function findRows(
  database: Transaction<Tables>,
  { student, version }: { readonly student: string; readonly version: number },
  entries: readonly string[] | null,
) {
  const rows = database
    .selectFrom('log_rows')
    .select(['row', 'entry_id', 'removed_at', 'checksum'])
    // of rows that came before there were checksums
    .select((of) => of.case().when('checksum', 'is', null).then(of.ref('text')).end().as('text'))
    .where('student_id', '=', student)
    .where('version', '=', version);
  const those = entries ? rows.where('entry_id', 'in', entries) : rows.where('entry_id', 'is', null);
  return those.execute();
}

/** What is there of entries; null is what is of none that can be read. */
async function knownRows(
  database: Transaction<Tables>,
  of: { readonly student: string; readonly version: number },
  entries: ReadonlySet<string | null>,
): Promise<KnownRows> {
  const named = [...entries].filter((entry) => entry !== null);
  const found = entries.has(null) ? await findRows(database, of, null) : [];
  for (const part of partsOf(named, AT_ONCE)) found.push(...(await findRows(database, of, part)));
  const known = new Map<string | null, Map<string, Known>>();
  for (const { row, entry_id, removed_at, checksum, text } of found) {
    const rows = known.get(entry_id) ?? new Map<string, Known>();
    known.set(
      entry_id,
      rows.set(checksum ?? checksumOf(text ?? ''), { row, isTakenOut: removed_at !== null }),
    );
  }
  return known;
}

/** Which rows say something letter for letter: one that changed on the disk does not. */
async function rowsThatSay(
  database: Transaction<Tables>,
  texts: ReadonlyMap<number, string>,
): Promise<ReadonlySet<number>> {
  const same = new Set<number>();
  for (const part of partsOf([...texts.keys()], WRITTEN_ROWS)) {
    const rows = await database
      .selectFrom('log_rows')
      .select(['row', 'text'])
      .where('row', 'in', part)
      .execute();
    for (const { row, text } of rows) if (text === texts.get(row)) same.add(row);
  }
  return same;
}

/**
 * Adds rows; those that are there already, letter for letter, are left out, and those that were taken out come back. What
 * is there is read for many entries at once, so that thousands of rows of one or of as many hold nothing up.
 * @returns how many are new
 */
export async function appendRows(
  database: Transaction<Tables>,
  student: string,
  { version, rows }: LogRequest,
  now: string,
): Promise<number> {
  const coming = [...new Set(rows)].map((text) => ({
    text,
    ...marksOf(text, now),
    checksum: checksumOf(text),
  }));
  const entries = new Set(coming.map(({ entry_id }) => entry_id));
  const known = await knownRows(database, { student, version }, entries);
  const there = coming.flatMap((each) => {
    const found = known.get(each.entry_id)?.get(each.checksum);
    return found ? [{ ...found, text: each.text }] : [];
  });
  const same = await rowsThatSay(database, new Map(there.map(({ row, text }) => [row, text])));
  const said = new Set(there.filter(({ row }) => same.has(row)).map(({ text }) => text));
  const back = there.filter(({ row, isTakenOut }) => isTakenOut && same.has(row)).map(({ row }) => row);
  const fresh = coming
    .filter(({ text }) => !said.has(text))
    .map((each) => ({ student_id: student, version, ...each, taken_at: now, removed_at: null }));
  for (const part of partsOf(back, AT_ONCE))
    await database
      .updateTable('log_rows')
      .set({ removed_at: null, taken_at: now })
      .where('row', 'in', part)
      .execute();
  for (const part of partsOf(fresh, WRITTEN_ROWS))
    await database.insertInto('log_rows').values(part).execute();
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
