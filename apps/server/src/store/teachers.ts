/**
 * Teachers of a school: who they are, the letters that let them in, and whose students are whose.
 *
 * Conventions: a student, with all that is kept of them, belongs to one teacher; a lesson and a book to whoever made
 * them. The first teacher is the head and stays so; a teacher who leaves hands everything to whoever lets them go.
 */
import { randomUUID } from 'node:crypto';
import {
  FIRST_TEACHER,
  folded,
  type ListedTeacher,
  type SchoolStudent,
  type Teacher,
  type WrittenTeacher,
} from '@shedbook/routes';
import type { Kysely } from 'kysely';
import { inTransaction } from './engine.ts';
import { eraseInside } from './erased.ts';
import type { Tables } from './tables.ts';
import { digestOf, newToken } from './token.ts';

/** What became of a change of a teacher. */
export type TeacherOutcome = 'saved' | 'missing' | 'name-taken' | 'first-stays';

/** The store of teachers. */
export interface TeacherStore {
  /** Everybody, the first teacher first, then by name. */
  list(): Promise<readonly ListedTeacher[]>;
  /** A teacher, or null. */
  read(id: string): Promise<Teacher | null>;
  /** The teacher with a name, whatever its capitals and accents, or null. */
  named(name: string): Promise<Teacher | null>;
  /** Adds a teacher, who cannot sign in before they were invited; null where somebody has the name. */
  add(name: string): Promise<Teacher | null>;
  /** Gives a teacher another name or role. */
  save(id: string, written: WrittenTeacher): Promise<TeacherOutcome>;
  /** A letter to a teacher, in place of those before: whoever has it chooses their passphrase. @returns its secret; null where there is no such teacher */
  invite(id: string): Promise<string | null>;
  /** Lets a teacher go, whose students, lessons and books are another's from then on. */
  remove(id: string, heir: string): Promise<Exclude<TeacherOutcome, 'name-taken'>>;
  /** Names of everybody's students, in the order in which they came. */
  roster(): Promise<readonly SchoolStudent[]>;
  /** Hands a student over, with all that is kept of them. @returns whether there are such a student and such a teacher */
  handOver(student: string, teacher: string): Promise<boolean>;
}

/** A store of teachers over an open database. @param clock gives the time of a change */
export function createTeacherStore(database: Kysely<Tables>, clock: () => Date): TeacherStore {
  const now = () => clock().toISOString();
  const all = () => database.selectFrom('teachers').select(['teachers.id', 'name', 'role']);
  const read = async (id: string) => (await all().where('id', '=', id).executeTakeFirst()) ?? null;
  const finds = (name: string) => folded(name.trim());
  const named = async (name: string) =>
    (await all().where('finds', '=', finds(name)).executeTakeFirst()) ?? null;
  return {
    read,
    named,
    list: async () => {
      const rows = await all()
        .select(({ selectFrom }) => [
          selectFrom('students')
            .whereRef('students.teacher_id', '=', 'teachers.id')
            .where('deleted_at', 'is', null)
            .select((of) => of.fn.countAll<number>().as('n'))
            .as('students'),
          selectFrom('passphrases')
            .whereRef('passphrases.teacher_id', '=', 'teachers.id')
            .select('teacher_id')
            .as('joined'),
        ])
        .orderBy('finds')
        .execute();
      const listed = rows.map(({ joined, students, ...teacher }) => {
        return { ...teacher, students: students ?? 0, hasJoined: joined !== null };
      });
      return listed.toSorted((a, b) => Number(b.id === FIRST_TEACHER) - Number(a.id === FIRST_TEACHER));
    },
    add: async (name) => {
      const row = { id: randomUUID(), name: name.trim(), finds: finds(name), role: 'teacher' as const };
      const added = await database
        .insertInto('teachers')
        .values(row)
        .onConflict((on) => on.column('finds').doNothing())
        .executeTakeFirst();
      const { finds: _, ...teacher } = row;
      return added.numInsertedOrUpdatedRows === 0n ? null : teacher;
    },
    save: (id, { name, role }) =>
      inTransaction(database, async (inside) => {
        if (id === FIRST_TEACHER && role !== 'head') return 'first-stays';
        const others = inside.selectFrom('teachers').select('id').where('finds', '=', finds(name));
        if (await others.where('id', '!=', id).executeTakeFirst()) return 'name-taken';
        const { numUpdatedRows } = await inside
          .updateTable('teachers')
          .set({ name: name.trim(), finds: finds(name), role })
          .where('id', '=', id)
          .executeTakeFirst();
        return numUpdatedRows > 0n ? 'saved' : 'missing';
      }),
    invite: (id) =>
      inTransaction(database, async (inside) => {
        const there = await inside
          .selectFrom('teachers')
          .select('id')
          .where('id', '=', id)
          .executeTakeFirst();
        if (!there) return null;
        const token = newToken();
        await inside.deleteFrom('invitations').where('teacher_id', '=', id).execute();
        const row = { token_digest: digestOf(token), teacher_id: id, made_at: now() };
        await inside.insertInto('invitations').values(row).execute();
        return token;
      }),
    remove: (id, heir) =>
      inTransaction(database, async (inside) => {
        if (id === FIRST_TEACHER) return 'first-stays';
        if (id === heir || (await eraseInside(inside, 'teacher', [id], now())) === 0) return 'missing';
        for (const table of ['students', 'lessons', 'books'] as const)
          await inside.updateTable(table).set({ teacher_id: heir }).where('teacher_id', '=', id).execute();
        for (const table of ['passphrases', 'invitations', 'passkeys', 'sessions'] as const)
          await inside.deleteFrom(table).where('teacher_id', '=', id).execute();
        return 'saved';
      }),
    roster: () =>
      database
        .selectFrom('students')
        .select(['id', 'name', 'teacher_id as teacher'])
        .where('deleted_at', 'is', null)
        .orderBy('created_at')
        .orderBy('id')
        .execute(),
    handOver: (student, teacher) =>
      inTransaction(database, async (inside) => {
        const there = inside.selectFrom('teachers').select('id').where('id', '=', teacher);
        if (!(await there.executeTakeFirst())) return false;
        const { numUpdatedRows } = await inside
          .updateTable('students')
          .set({ teacher_id: teacher })
          .where('id', '=', student)
          .where('deleted_at', 'is', null)
          .executeTakeFirst();
        return numUpdatedRows > 0n;
      }),
  };
}
