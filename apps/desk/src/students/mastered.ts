/** What a student has of a lesson: the exercises that are firm, by the coach's own measure. */
import { momentOf, standExercises } from '@shedbook/coach';
import type { StoredStudent } from '@shedbook/routes';
import { momentNow } from '@shedbook/stand';
import { readRowsAfter } from './api.ts';
import { joinRows } from './kept-log.ts';
import type { DeskShelf } from './take-in.ts';

/** Numbers of the exercises of a lesson that a student plays at the goal tempo. */
export async function masteredBy({ id }: StoredStudent, shelf: DeskShelf): Promise<readonly number[]> {
  const { log } = joinRows(await readRowsAfter(id, 0));
  return standExercises([shelf], log, momentOf(momentNow()).day)
    .filter(({ standing }) => standing === 'firm')
    .map(({ exercise }) => exercise.number);
}
