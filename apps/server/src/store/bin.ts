/**
 * The bin: what was put away and can be brought back. Lessons, books, students, and what was taken in of a student's
 * practice at one time.
 */
import type { BinContent, Teacher } from '@shedbook/routes';
import { type Kysely, sql } from 'kysely';
import { booksInBin } from './books.ts';
import { inTransaction } from './engine.ts';
import { noteErased } from './erased.ts';
import type { Tables } from './tables.ts';

/** What can be done with what was taken in. */
export interface TakenInStore {
  /** Puts away what was taken in of a student's practice at a time. @returns whether there was any */
  takeOut(student: string, takenAt: string): Promise<boolean>;
  /** Brings it back. @returns whether it lay in the bin */
  putBack(student: string, takenAt: string): Promise<boolean>;
  /** Erases it at once. @returns whether there was any */
  eraseTakenIn(student: string, takenAt: string): Promise<boolean>;
}

async function lessonsIn(
  database: Kysely<Tables>,
  { id, role }: Pick<Teacher, 'id' | 'role'>,
): Promise<BinContent['lessons']> {
  const all = database
    .selectFrom('lessons')
    .innerJoin('steps', (join) =>
      join.onRef('steps.lesson_id', '=', 'lessons.id').onRef('steps.step', '=', 'lessons.step'),
    )
    .select(['lessons.id', 'steps.text', 'lessons.deleted_at as removedAt'])
    .where('lessons.deleted_at', 'is not', null)
    .orderBy('lessons.deleted_at', 'desc');
  const rows = await (role === 'head' ? all : all.where('lessons.teacher_id', '=', id)).execute();
  return rows.map(({ removedAt, ...lesson }) => ({ ...lesson, removedAt: removedAt ?? '' }));
}

async function studentsIn(database: Kysely<Tables>, teacher: string): Promise<BinContent['students']> {
  const rows = await database
    .selectFrom('students')
    .select(['id', 'name', 'deleted_at as removedAt'])
    .where('teacher_id', '=', teacher)
    .where('deleted_at', 'is not', null)
    .orderBy('deleted_at', 'desc')
    .execute();
  return rows.map(({ removedAt, ...student }) => ({ ...student, removedAt: removedAt ?? '' }));
}

async function practiceIn(database: Kysely<Tables>, teacher: string): Promise<BinContent['practice']> {
  const rows = await database
    .selectFrom('log_rows')
    .innerJoin('students', 'students.id', 'log_rows.student_id')
    .select((of) => [
      'students.id as student',
      'students.name',
      'log_rows.taken_at as takenAt',
      of.fn.countAll<number>().as('rows'),
      sql<string>`max(log_rows.removed_at)`.as('removedAt'),
    ])
    .where('students.teacher_id', '=', teacher)
    .where('students.deleted_at', 'is', null)
    .where('log_rows.removed_at', 'is not', null)
    .groupBy(['students.id', 'students.name', 'log_rows.taken_at'])
    .orderBy('removedAt', 'desc')
    .execute();
  return rows;
}

/** Everything that lies in the bin and a teacher may bring back, last put away first. */
export async function binOf(
  database: Kysely<Tables>,
  teacher: Pick<Teacher, 'id' | 'role'>,
): Promise<BinContent> {
  return {
    lessons: await lessonsIn(database, teacher),
    books: await booksInBin(database, teacher.role === 'head' ? null : teacher.id),
    students: await studentsIn(database, teacher.id),
    practice: await practiceIn(database, teacher.id),
  };
}

/** Putting away, and bringing back, what was taken in. */
export function createTakenInStore(database: Kysely<Tables>, binClock: () => Date): TakenInStore {
  const mark = async (student: string, takenAt: string, removedAt: string | null) => {
    const { numUpdatedRows } = await database
      .updateTable('log_rows')
      .set({ removed_at: removedAt })
      .where('student_id', '=', student)
      .where('taken_at', '=', takenAt)
      .where('removed_at', removedAt === null ? 'is not' : 'is', null)
      .executeTakeFirst();
    return numUpdatedRows > 0n;
  };
  return {
    takeOut: (student, takenAt) => mark(student, takenAt, binClock().toISOString()),
    putBack: (student, takenAt) => mark(student, takenAt, null),
    eraseTakenIn: (student, takenAt) =>
      inTransaction(database, async (inside) => {
        const rows = inside.deleteFrom('log_rows').where('student_id', '=', student);
        const { numDeletedRows } = await rows.where('taken_at', '=', takenAt).executeTakeFirst();
        if (numDeletedRows === 0n) return false;
        await noteErased(inside, 'practice', [{ student, takenAt }], binClock().toISOString());
        return true;
      }),
  };
}
