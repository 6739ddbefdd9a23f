/** The lessons of the list and where each is filed, and the students whom lessons were set. */
import type { LessonSummary, StoredStudent } from '@shedbook/routes';
import { useCallback, useEffect, useState } from 'react';
import { listShelf } from '../document/api.ts';
import { ask } from '../document/client.ts';

/** What the list shows. */
export interface Shelf {
  /** Null while they are on their way. */
  readonly lessons: readonly LessonSummary[] | null;
  readonly students: readonly StoredStudent[];
  readonly error: Error | null;
  readonly refresh: () => Promise<void>;
}

/** The lessons; looked at again when the window comes to the front. */
export function useShelf(): Shelf {
  const [lessons, setLessons] = useState<readonly LessonSummary[] | null>(null);
  const [students, setStudents] = useState<readonly StoredStudent[]>([]);
  const [error, setError] = useState<Error | null>(null);
  const refresh = useCallback(async () => {
    try {
      setLessons(await listShelf());
      setError(null);
      // Without the roster there are no shelves of students; the lessons are there all the same.
      setStudents(await ask('listStudents', {}).catch(() => []));
    } catch (reason) {
      setError(reason as Error);
    }
  }, []);
  useEffect(() => {
    void refresh();
    window.addEventListener('focus', refresh);
    return () => window.removeEventListener('focus', refresh);
  }, [refresh]);
  return { lessons, students, error, refresh };
}
