/** Dated lessons of a student: read, written on, and what is set in them. */
import type { HourList, StoredAssignment, StoredHour, StoredStudent } from '@shedbook/routes';
import { useSay } from '@shedbook/stand';
import { useCallback, useEffect, useRef } from 'react';
import { useChanges } from '../document/changes.ts';
import { wordsFor } from '../document/error-words.ts';
import { useFresh } from '../document/use-fresh.ts';
import { useTold } from '../document/use-told.ts';
import { useWords } from '../words/students-words.tsx';
import { changeHour, changeStudent, eraseHour, listHours, setInHour } from './api.ts';
import { useDayName } from './use-day-name.ts';

/** What a teacher writes of an hour. */
export type HourText = Pick<StoredHour, 'attendance' | 'done' | 'notes'>;

/** The hours, and what can be done with them. */
export interface Hours {
  /** Null while they are read. */
  readonly list: HourList | null;
  /** Writes on an hour; what else is written on it stays. */
  readonly write: (day: string, change: Partial<HourText>) => Promise<void>;
  /** Erases an hour, with a way to undo it. */
  readonly erase: (hour: StoredHour) => Promise<void>;
  /** Sets a student something in an hour, in place of what was set, with a way to undo it. */
  readonly set: (
    student: StoredStudent,
    day: string,
    assignments: readonly StoredAssignment[],
  ) => Promise<void>;
}

const WEEK_MS = 7 * 24 * 3_600_000;

/** The day of the next lesson: the first that is planned after a day, else a week later. */
export function nextDayOf({ list }: Pick<Hours, 'list'>, today: string): string {
  const planned = list?.hours.findLast((each) => each.day > today && each.attendance === 'planned');
  return planned?.day ?? new Date(Date.parse(`${today}T12:00:00Z`) + WEEK_MS).toISOString().slice(0, 10);
}

/** The hours of a student. @param put shows what became of the student */
export function useHours(id: string, put: (student: StoredStudent) => void): Hours {
  const words = useWords();
  const say = useSay();
  const dayName = useDayName();
  const { value: list, error, refresh } = useFresh(useCallback(() => listHours(id), [id]));
  const turn = useRef<Promise<unknown>>(Promise.resolve());
  useChanges(refresh);
  useEffect(() => {
    if (error && list === null) say(wordsFor(error, words));
  }, [error, list, say, words]);
  /** One after the other, since each write goes from the revision that the one before made. */
  const attempt = (work: () => Promise<void>): Promise<void> => {
    const next = turn.current
      .then(work)
      .catch((failed: unknown) => say(wordsFor(failed, words)))
      .then(refresh);
    turn.current = next;
    return next;
  };
  const told = useTold(attempt);
  const hourOf = (day: string) => list?.hours.find((each) => each.day === day) ?? null;
  return {
    list,
    write: (day, change) => attempt(async () => void (await changeHour(id, day, hourOf(day), change))),
    erase: ({ day, attendance, done, notes, set }) =>
      attempt(async () => {
        await eraseHour(id, day);
        told(words.hours.erased({ day: dayName(day) }), () =>
          changeHour(id, day, null, { attendance, done, notes, set }),
        );
      }),
    set: (student, day, assignments) =>
      attempt(async () => {
        const before = hourOf(day);
        const { student: now, hour } = await setInHour(student, day, assignments);
        put(now);
        told(words.nextLesson.isSet({ name: student.name }), async () => {
          put(await changeStudent(now, (content) => ({ ...content, assignments: student.assignments })));
          await (before ? changeHour(id, day, hour, { set: before.set }) : eraseHour(id, day));
        });
      }),
  };
}
