/** The practice of everybody on the roster. */
import type { PracticeLog } from '@shedbook/core';
import { listStudents, readRowsAfter } from './api.ts';
import { joinRows } from './kept-log.ts';

/** The log of each student; one after another, so that a long roster asks for no more than one at a time. */
export async function readEveryLog(): Promise<readonly PracticeLog[]> {
  const logs: PracticeLog[] = [];
  let after: string | null = null;
  do {
    const part: Awaited<ReturnType<typeof listStudents>> = await listStudents('', after);
    for (const { id, rows } of part.students) {
      if (rows > 0) logs.push(joinRows(await readRowsAfter(id, 0)).log);
    }
    after = part.next;
  } while (after !== null);
  return logs;
}
