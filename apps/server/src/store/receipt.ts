/** What is kept of a student, counted before it is erased. */
import { type Receipt, readAssignments } from '@shedbook/routes';
import { sql, type Transaction } from 'kysely';
import type { Tables } from './tables.ts';

/** Counts everything that goes with a student, on the roster or in the bin; null where there is none. */
export async function receiptOf(
  inside: Transaction<Tables>,
  id: string,
  erasedAt: string,
): Promise<Receipt | null> {
  const student = await inside
    .selectFrom('students')
    .select('assignments')
    .where('id', '=', id)
    .executeTakeFirst();
  if (!student) return null;
  const count = async (table: 'hours' | 'log_rows' | 'links' | 'voices') => {
    const all = inside.selectFrom(table).select((of) => of.fn.countAll<number>().as('n'));
    return (await all.where('student_id', '=', id).executeTakeFirstOrThrow()).n;
  };
  const takes = await inside
    .selectFrom('takes')
    .select((of) => [of.fn.countAll<number>().as('n'), sql<number>`coalesce(sum(bytes), 0)`.as('bytes')])
    .where('student_id', '=', id)
    .executeTakeFirstOrThrow();
  return {
    erasedAt,
    rows: await count('log_rows'),
    assignments: readAssignments(student.assignments).length,
    ...{ takes: takes.n, takeBytes: takes.bytes },
    ...{ voices: await count('voices'), hours: await count('hours'), links: await count('links') },
  };
}
