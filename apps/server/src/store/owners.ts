/** Whose something is: what a guard asks before anybody is answered. */
import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** Tells whose something is, wherever it lies, the bin included; null where there is no such thing. */
export interface Owners {
  /** The teacher whose student it is. */
  student(id: string): Promise<string | null>;
  /** The teacher whose student's private link it is. */
  link(id: string): Promise<string | null>;
  /** The teacher who wrote it. */
  lesson(id: string): Promise<string | null>;
  /** The teacher who put it together. */
  book(id: string): Promise<string | null>;
  /** The teacher who wrote the lesson of it. */
  demonstration(id: string): Promise<string | null>;
}

/** The owners in an open database. */
export function createOwners(database: Kysely<Tables>): Owners {
  const of = (table: 'students' | 'lessons' | 'books') => async (id: string) => {
    const found = database.selectFrom(table).select('teacher_id').where('id', '=', id);
    return (await found.executeTakeFirst())?.teacher_id ?? null;
  };
  return {
    student: of('students'),
    lesson: of('lessons'),
    book: of('books'),
    link: async (id) => {
      const found = database
        .selectFrom('links')
        .innerJoin('students', 'students.id', 'links.student_id')
        .select('teacher_id')
        .where('links.id', '=', id);
      return (await found.executeTakeFirst())?.teacher_id ?? null;
    },
    demonstration: async (id) => {
      const found = database
        .selectFrom('demonstrations')
        .innerJoin('lessons', 'lessons.id', 'demonstrations.lesson_id')
        .select('teacher_id')
        .where('demonstrations.id', '=', id);
      return (await found.executeTakeFirst())?.teacher_id ?? null;
    },
  };
}
