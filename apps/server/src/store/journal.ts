/**
 * The journal: who did what, and when.
 *
 * Conventions: an entry holds ids and counts, nothing of what was said, played or written, and no secret; names are
 * looked up when it is read, so that whoever was erased has none in it. It is kept for a year.
 */
import { randomUUID } from 'node:crypto';
import {
  type Deed,
  type Doer,
  FIRST_TEACHER,
  JOURNAL_PAGE,
  type JournalEntry,
  type JournalPage,
  type Teacher,
} from '@shedbook/routes';
import { type Kysely, sql } from 'kysely';
import type { Tables } from './tables.ts';

/** What is to be written. */
export interface JournalNote {
  readonly who: Doer;
  readonly did: Deed;
  /** Id of the student whom it is about. */
  readonly student?: string | null;
  /** How many, where several. */
  readonly n?: number | null;
  /** The teacher who did it, or whose student did. */
  readonly teacher?: string | null;
}

/** The journal. */
export interface Journal {
  write(note: JournalNote): Promise<void>;
  /**
   * A part of it, the last first.
   * @param after place after which it goes on
   * @param reader who reads: a teacher what is of them and their students, a head and whoever works on the computer all
   */
  page(after: string | null, reader?: Pick<Teacher, 'id' | 'role'>): Promise<JournalPage>;
  /** Forgets what is older than a year. */
  trim(): Promise<void>;
}

/** Days that an entry is kept. */
const KEPT_DAYS = 366;
const DAY_MS = 24 * 3_600_000;

/** Whose an entry is: of a student who is kept the teacher who has them now, else who did it. */
const OF_THEM = sql<string>`coalesce(students.teacher_id, journal.teacher_id)`;

/** A journal over an open database. @param clock gives the time of an entry */
export function openJournal(database: Kysely<Tables>, clock: () => Date): Journal {
  return {
    write: async ({ who, did, student = null, n = null, teacher = null }) => {
      const at = clock().toISOString();
      const row = { id: randomUUID(), at, who, did, student_id: student, n, teacher_id: teacher };
      await database.insertInto('journal').values(row).execute();
    },
    page: async (after, reader = { id: FIRST_TEACHER, role: 'head' }) => {
      const [at = '', id = ''] = (after ?? '').split(' ');
      const all = database
        .selectFrom('journal')
        .leftJoin('students', 'students.id', 'journal.student_id')
        .leftJoin('teachers', 'teachers.id', 'journal.teacher_id')
        .select(['journal.id', 'at', 'who', 'did', 'student_id as student', 'students.name', 'n'])
        .select('teachers.name as teacher')
        .orderBy('at', 'desc')
        .orderBy('journal.id', 'desc')
        .limit(JOURNAL_PAGE + 1);
      const own = reader.role === 'head' ? all : all.where(OF_THEM, '=', reader.id);
      const from = after === null ? own : own.where(sql<boolean>`(at, journal.id) < (${at}, ${id})`);
      const rows = await from.execute();
      const shown = rows.slice(0, JOURNAL_PAGE);
      const last = shown.at(-1);
      return {
        entries: shown.map(({ id: _, teacher, ...entry }) => {
          const by = entry.who === 'desk' ? teacher || null : null;
          return { ...entry, teacher: by } as JournalEntry;
        }),
        next: rows.length > JOURNAL_PAGE && last ? `${last.at} ${last.id}` : null,
      };
    },
    trim: async () => {
      const before = new Date(clock().getTime() - KEPT_DAYS * DAY_MS).toISOString();
      await database.deleteFrom('journal').where('at', '<', before).execute();
    },
  };
}
