/** How long somebody has not played. */
import { readMoment } from '@shedbook/coach';
import type { StoredStudent } from '@shedbook/routes';
import type { StudentsWords } from '@shedbook/words';

/** Days since somebody played last; null where they never did. @param today counted as in a moment */
export function daysAway(
  { lastPlayedAt }: Pick<StoredStudent, 'lastPlayedAt'>,
  today: number,
): number | null {
  const last = lastPlayedAt === null ? null : readMoment(lastPlayedAt);
  return last ? today - last.day : null;
}

/** Days that a student's calendar may be ahead of the teacher's: it is tomorrow where they live. */
const AHEAD_DAYS = 1;

/** How long somebody has not played, in words; a later day was written under a clock that was ahead. */
export function awayWords(words: StudentsWords['students'], days: number | null): string {
  if (days === null) return words.nothingHeard;
  return days < -AHEAD_DAYS ? words.clockAhead : words.daysAway({ days: Math.max(0, days) });
}
