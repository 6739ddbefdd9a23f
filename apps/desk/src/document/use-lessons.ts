/** The lessons on the desk: each as it is kept, and as it reads. */
import { type LessonReading, parseLesson } from '@shedbook/core';
import type { StoredLesson } from '@shedbook/routes';
import { titleOf } from '../edit/heading.ts';
import { listLessons } from './api.ts';
import { useFresh } from './use-fresh.ts';

/** A lesson on the desk. */
export interface DeskLesson {
  readonly stored: StoredLesson;
  readonly reading: LessonReading;
  readonly title: string | null;
}

function look(stored: StoredLesson): DeskLesson {
  return { stored, reading: parseLesson(stored.text, 'lesson'), title: titleOf(stored.text) };
}

async function readAll(): Promise<readonly DeskLesson[]> {
  return (await listLessons()).map(look);
}

/** The lessons, null while they are on their way, and a way to look again. */
export function useLessons(): {
  readonly lessons: readonly DeskLesson[] | null;
  readonly error: Error | null;
  readonly refresh: () => Promise<void>;
} {
  const { value: lessons, error, refresh } = useFresh(readAll);
  return { lessons, error, refresh };
}
