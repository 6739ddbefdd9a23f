/** The lessons on the desk: each as it is kept, and as it reads. */
import { type LessonReading, parseLesson } from '@shedbook/core';
import type { StoredLesson } from '@shedbook/routes';
import { useCallback, useEffect, useState } from 'react';
import { titleOf } from '../edit/heading.ts';
import { listLessons } from './api.ts';

/** A lesson on the desk. */
export interface DeskLesson {
  readonly stored: StoredLesson;
  readonly reading: LessonReading;
  readonly title: string | null;
}

function look(stored: StoredLesson): DeskLesson {
  return { stored, reading: parseLesson(stored.text, 'lesson'), title: titleOf(stored.text) };
}

/** The lessons, null while they are on their way, and a way to look again. */
export function useLessons(): {
  readonly lessons: readonly DeskLesson[] | null;
  readonly error: Error | null;
  readonly refresh: () => Promise<void>;
} {
  const [lessons, setLessons] = useState<readonly DeskLesson[] | null>(null);
  const [error, setError] = useState<Error | null>(null);
  const refresh = useCallback(async () => {
    try {
      setLessons((await listLessons()).map(look));
      setError(null);
    } catch (reason) {
      setError(reason as Error);
    }
  }, []);
  useEffect(() => {
    void refresh();
    window.addEventListener('focus', refresh);
    return () => window.removeEventListener('focus', refresh);
  }, [refresh]);
  return { lessons, error, refresh };
}
