/** The lessons of the list and where each is filed, and the students whom lessons were set. */
import type { LessonSummary, RosterName } from '@shedbook/routes';
import { useCallback } from 'react';
import { listShelf } from '../document/api.ts';
import { ask } from '../document/client.ts';
import { useFresh } from '../document/use-fresh.ts';

const NOBODY: readonly RosterName[] = [];

/** What the list shows. */
export interface Shelf {
  /** Null while they are on their way. */
  readonly lessons: readonly LessonSummary[] | null;
  readonly students: readonly RosterName[];
  readonly error: Error | null;
  readonly refresh: () => Promise<void>;
}

const listNames = () => ask('listNames', {});

/** The lessons; looked at again when the window comes to the front. */
export function useShelf(): Shelf {
  const { value: lessons, error, refresh: lookAtLessons } = useFresh(listShelf);
  // Without the roster there are no shelves of students; the lessons are there all the same.
  const { value: students, refresh: lookAtStudents } = useFresh(listNames);
  const refresh = useCallback(async () => {
    await Promise.all([lookAtLessons(), lookAtStudents()]);
  }, [lookAtLessons, lookAtStudents]);
  return { lessons, students: students ?? NOBODY, error, refresh };
}
