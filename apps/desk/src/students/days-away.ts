/** How long somebody has not played. */
import { readMoment } from '@shedbook/coach';
import type { StoredStudent } from '@shedbook/routes';

/** Days since somebody played last; null where they never did. @param today counted as in a moment */
export function daysAway(
  { lastPlayedAt }: Pick<StoredStudent, 'lastPlayedAt'>,
  today: number,
): number | null {
  const last = lastPlayedAt === null ? null : readMoment(lastPlayedAt);
  return last ? today - last.day : null;
}
