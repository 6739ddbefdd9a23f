/** The roster: everybody on it, the lessons on the desk, and every change, kept at once. */

import type { StoredStudent, StudentContent } from '@shedbook/routes';
import { useSay } from '@shedbook/stand';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { createLesson } from '../document/api.ts';
import { wordsFor } from '../document/error-words.ts';
import { useLessons } from '../document/use-lessons.ts';
import { go } from '../shared/route.ts';
import { useWords } from '../words/words.tsx';
import { changeStudent, createStudent, listStudents, removeStudent, restoreStudent } from './api.ts';
import { type DeskText, ownLesson } from './own-lesson.ts';

/** The roster and what can be done with it. */
export interface Roster {
  /** Null while it is on its way. */
  readonly students: readonly StoredStudent[] | null;
  /** The lessons on the desk that can be read. */
  readonly shelf: readonly DeskText[];
  /** Makes a lesson of what is set for a student, one for each lesson that it is from, and opens it. */
  readonly makeLesson: (student: StoredStudent) => Promise<void>;
  readonly add: (name: string) => Promise<void>;
  readonly change: (
    student: StoredStudent,
    change: (content: StudentContent) => StudentContent,
  ) => Promise<void>;
  readonly remove: (student: StoredStudent) => Promise<void>;
}

function useShelf(): readonly DeskText[] {
  const { lessons } = useLessons();
  return useMemo(
    () =>
      (lessons ?? []).flatMap(({ stored, reading }) =>
        reading.lesson ? [{ id: stored.id, lesson: reading.lesson, text: stored.text }] : [],
      ),
    [lessons],
  );
}

/** The roster. */
export function useRoster(): Roster {
  const words = useWords();
  const say = useSay();
  const shelf = useShelf();
  const [students, setStudents] = useState<readonly StoredStudent[] | null>(null);
  const refresh = useCallback(async () => setStudents(await listStudents()), []);
  const attempt = async (work: () => Promise<void>) => {
    try {
      await work();
    } catch (error) {
      say(wordsFor(error, words));
    }
  };
  useEffect(() => {
    refresh().catch((error: unknown) => say(wordsFor(error, words)));
    const look = () => void refresh().catch(() => undefined);
    window.addEventListener('focus', look);
    return () => window.removeEventListener('focus', look);
  }, [refresh, say, words]);
  return {
    students,
    shelf,
    add: (name) =>
      attempt(async () => {
        const made = await createStudent(name);
        setStudents((before) => [...(before ?? []), made]);
      }),
    change: (student, change) =>
      attempt(async () => {
        const kept = await changeStudent(student, change);
        setStudents((before) => before?.map((each) => (each.id === kept.id ? kept : each)) ?? null);
      }),
    makeLesson: ({ name, assignments }) =>
      attempt(async () => {
        const texts = shelf.flatMap((each) => {
          const title = words.students.lessonFor({ title: each.lesson.title, name });
          return ownLesson(each, assignments, title) ?? [];
        });
        const made = await Promise.all(texts.map(createLesson));
        const [first] = made;
        if (first && made.length === 1) go({ at: 'lesson', id: first.id, view: 'page' });
        else if (first) go({ at: 'desk' });
      }),
    remove: (student) =>
      attempt(async () => {
        await removeStudent(student.id);
        await refresh();
        const back = () =>
          attempt(async () => {
            await restoreStudent(student.id);
            await refresh();
          });
        say(words.students.removed({ name: student.name }), {
          label: words.desk.undo,
          run: () => void back(),
        });
      }),
  };
}
