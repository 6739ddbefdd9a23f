/**
 * The roster, in parts: who is on it, what is kept of each, and who has not played for a while.
 *
 * Conventions: students stand in the order in which they came; practice that was taken out counts for nothing.
 */
import {
  FIRST_TEACHER,
  type Inbox,
  ROSTER_PAGE,
  type RosterName,
  type RosterPage,
  readAssignments,
  type StoredAssignment,
  type StoredStudent,
  wordsSought,
} from '@shedbook/routes';
import { type Kysely, sql, type Transaction } from 'kysely';
import type { Tables } from './tables.ts';

type Reader = Kysely<Tables> | Transaction<Tables>;

/** Which part of the roster. */
export interface RosterAsked {
  readonly find: string;
  /** Place after which it goes on. */
  readonly after?: string | undefined;
}

/** What the store says of the roster. */
export interface RosterStore {
  /** @param teacher whose roster; the first teacher's where it is left out, as in all that follows */
  page(asked: RosterAsked, teacher?: string): Promise<RosterPage>;
  names(teacher?: string): Promise<readonly RosterName[]>;
  /** Who played last before a time, the longest ago first; as many as are shown, and how many they are. */
  away(playedBefore: Date, teacher?: string): Promise<Pick<Inbox, 'away' | 'awayOf'>>;
}

/** When somebody began what they played last, with its offset from UTC. */
const MOMENT = sql<string>`json_extract(text, '$.startedAt')`;

/** Students with the newest row of their practice and the last day of it. */
export function studentsOf(database: Reader) {
  return database
    .selectFrom('students')
    .selectAll('students')
    .select(({ selectFrom }) => {
      const rows = selectFrom('log_rows')
        .whereRef('log_rows.student_id', '=', 'students.id')
        .where('log_rows.removed_at', 'is', null);
      const latest = rows.where('played_at', 'is not', null).orderBy('played_at', 'desc').limit(1);
      return [
        rows.select((of) => of.fn.max('row').as('row')).as('last_row'),
        rows.select((of) => of.fn.countAll<number>().as('rows')).as('row_count'),
        latest.select(MOMENT.as('moment')).as('last_played_at'),
      ];
    })
    .where('deleted_at', 'is', null);
}

/** A row of {@link studentsOf}. */
export type StudentRow = Awaited<ReturnType<ReturnType<typeof studentsOf>['execute']>>[number];

/** Whether a guardian decides, and whether they have. */
function minorityOf({
  is_minor,
  consent_by,
  consent_at,
}: Pick<StudentRow, 'is_minor' | 'consent_by' | 'consent_at'>): StoredStudent['minority'] {
  const consent = consent_by === null || consent_at === null ? null : { by: consent_by, notedAt: consent_at };
  return { isMinor: is_minor === 1, consent };
}

/** A student as they are sent. */
export function studentOf(row: StudentRow): StoredStudent {
  return {
    id: row.id,
    name: row.name,
    lastRow: row.last_row ?? 0,
    rows: row.row_count ?? 0,
    lastPlayedAt: row.last_played_at,
    assignments: readAssignments(row.assignments),
    level: row.level,
    setUp: row.set_up,
    minority: minorityOf(row),
    coach: { state: row.coach, until: row.coach_until },
    revision: row.revision,
    createdAt: row.created_at,
    updatedAt: row.updated_at,
  };
}

/** Where somebody stands on the roster, as a text; nobody else stands there. */
function placeOf({ created_at, id }: Pick<StudentRow, 'created_at' | 'id'>): string {
  return `${created_at} ${id}`;
}

async function pageOf(database: Reader, { find, after }: RosterAsked, teacher: string): Promise<RosterPage> {
  const words = wordsSought(find).map((word) => sql<boolean>`instr(finds, ${word}) > 0`);
  const all = database
    .selectFrom('students')
    .select((of) => of.fn.countAll<number>().as('n'))
    .where('teacher_id', '=', teacher)
    .where('deleted_at', 'is', null);
  const { n } = await words.reduce((query, word) => query.where(word), all).executeTakeFirstOrThrow();
  const [createdAt = '', id = ''] = (after ?? '').split(' ');
  const rows = await words
    .reduce((query, word) => query.where(word), studentsOf(database))
    .where('teacher_id', '=', teacher)
    .where(sql<boolean>`(created_at, id) > (${createdAt}, ${id})`)
    .orderBy('created_at')
    .orderBy('id')
    .limit(ROSTER_PAGE + 1)
    .execute();
  const shown = rows.slice(0, ROSTER_PAGE);
  const last = shown.at(-1);
  return {
    students: shown.map(studentOf),
    of: n,
    next: rows.length > ROSTER_PAGE && last ? placeOf(last) : null,
  };
}

async function namesOf(database: Reader, teacher: string): Promise<readonly RosterName[]> {
  const rows = await database
    .selectFrom('students')
    .select(['id', 'name', 'assignments'])
    .where('teacher_id', '=', teacher)
    .where('deleted_at', 'is', null)
    .orderBy('created_at')
    .orderBy('id')
    .execute();
  return rows.map(({ id, name, assignments }) => {
    const set = JSON.parse(assignments) as readonly StoredAssignment[];
    return { id, name, lessons: [...new Set(set.map(({ lesson }) => lesson))] };
  });
}

/** When somebody played last: as it is written, unless the clock that wrote it was ahead of when it came in. */
function lastPlayed(playedAt: number, moment: string): string {
  const isAhead = Date.parse(moment) / 1000 >= playedAt + 1;
  return isAhead ? new Date(playedAt * 1000).toISOString() : moment;
}

async function awayFrom(
  database: Reader,
  playedBefore: Date,
  teacher: string,
): Promise<Pick<Inbox, 'away' | 'awayOf'>> {
  const seconds = Math.floor(playedBefore.getTime() / 1000);
  const away = database
    .selectFrom('students')
    .where('teacher_id', '=', teacher)
    .where('deleted_at', 'is', null)
    .where('played_at', '<', seconds);
  const { n } = await away.select((of) => of.fn.countAll<number>().as('n')).executeTakeFirstOrThrow();
  const rows = await away
    .select(['id', 'name', 'played_at'])
    .orderBy('played_at')
    .limit(ROSTER_PAGE)
    .execute();
  if (rows.length === 0) return { away: [], awayOf: n };
  const moments = await database
    .selectFrom('log_rows')
    .select(['student_id', 'played_at', MOMENT.as('moment')])
    .where(
      'student_id',
      'in',
      rows.map(({ id }) => id),
    )
    .where('removed_at', 'is', null)
    .where(
      'played_at',
      'in',
      rows.map(({ played_at }) => played_at),
    )
    .execute();
  const momentOf = new Map(moments.map((each) => [`${each.student_id} ${each.played_at}`, each.moment]));
  return {
    away: rows.map(({ id, name, played_at }) => ({
      ...{ id, name, lastPlayedAt: lastPlayed(played_at ?? 0, momentOf.get(`${id} ${played_at}`) ?? '') },
    })),
    awayOf: n,
  };
}

/** The roster of an open database. */
export function createRosterStore(database: Kysely<Tables>): RosterStore {
  return {
    page: (asked, teacher = FIRST_TEACHER) => pageOf(database, asked, teacher),
    names: (teacher = FIRST_TEACHER) => namesOf(database, teacher),
    away: (playedBefore, teacher = FIRST_TEACHER) => awayFrom(database, playedBefore, teacher),
  };
}
