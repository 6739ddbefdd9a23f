/** The roster: everybody on it, the lessons on the desk, and every change, kept at once. */

import type { PracticeLog } from '@shedbook/core';
import type { CoachSetting, MinorityRequest, StoredStudent, StudentContent } from '@shedbook/routes';
import { useSay } from '@shedbook/stand';
import { useCallback, useMemo } from 'react';
import { createLesson, removeLesson } from '../document/api.ts';
import { wordsFor } from '../document/error-words.ts';
import { useLessons } from '../document/use-lessons.ts';
import { useTold } from '../document/use-told.ts';
import type { Erased } from '../shared/receipt.tsx';
import { go } from '../shared/route.ts';
import { useWords } from '../words/students-words.tsx';
import {
  changeStudent,
  createStudent,
  eraseStudent,
  noteMinority,
  putBack,
  removeStudent,
  restoreStudent,
  setCoach,
  takeIn,
  takeOut,
} from './api.ts';
import type { KeptReport } from './kept-log.ts';
import { type DeskText, ownLesson } from './own-lesson.ts';
import { type RosterPart, useRosterPart } from './use-roster-part.ts';

/** The roster and what can be done with it; what is done says whether it was. */
export interface Roster {
  readonly part: RosterPart;
  /** The lessons on the desk that can be read. */
  readonly shelf: readonly DeskText[];
  /** Makes a lesson of what is set for a student, one for each lesson that it is from, and opens it. */
  readonly makeLesson: (student: StoredStudent) => Promise<boolean>;
  readonly add: (name: string) => Promise<boolean>;
  readonly change: (
    student: StoredStudent,
    change: (content: StudentContent) => StudentContent,
  ) => Promise<boolean>;
  /** Adds to a student's practice. */
  readonly takeIn: (
    student: StoredStudent,
    log: PracticeLog,
    reports?: readonly KeptReport[],
  ) => Promise<boolean>;
  /** Takes out of a student's practice what was brought in at a time. */
  readonly takeOut: (student: StoredStudent, takenAt: string, entries: number) => Promise<boolean>;
  /** Keeps whether a guardian decides about recordings, and says so. */
  readonly noteMinority: (
    student: StoredStudent,
    minority: MinorityRequest,
    said: string,
  ) => Promise<boolean>;
  /** Sets whether the coach proposes anything. */
  readonly setCoach: (student: StoredStudent, setting: CoachSetting) => Promise<boolean>;
  readonly remove: (student: StoredStudent) => Promise<boolean>;
  readonly erase: (student: StoredStudent) => Promise<boolean>;
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

/** The roster. @param onErased told who was erased, and what of them */
export function useRoster(onErased: (erased: Erased) => void): Roster {
  const words = useWords();
  const say = useSay();
  const shelf = useShelf();
  const part = useRosterPart(useCallback((error: unknown) => say(wordsFor(error, words)), [say, words]));
  const { refresh, put } = part;
  const attempt = async (work: () => Promise<void>): Promise<boolean> => {
    try {
      await work();
      return true;
    } catch (error) {
      say(wordsFor(error, words));
      return false;
    }
  };
  const told = useTold((work) =>
    attempt(async () => {
      await work();
      await refresh();
    }),
  );
  return {
    part,
    shelf,
    add: (name) =>
      attempt(async () => {
        const made = await createStudent(name);
        await refresh();
        // Beyond what is in view nobody would see who was added.
        if (part.view?.next || part.find !== '') await part.choose(made.id);
        told(words.students.added({ name }), () => removeStudent(made.id));
      }),
    change: (student, change) =>
      attempt(async () => {
        const kept = await changeStudent(student, change);
        put(kept);
        const { name, assignments, level, setUp } = student;
        told(words.students.changed({ name }), () =>
          changeStudent(kept, () => ({ name, assignments, level, setUp })),
        );
      }),
    makeLesson: ({ name, assignments }) =>
      attempt(async () => {
        const texts = shelf.flatMap((each) => {
          const title = words.students.lessonFor({ title: each.lesson.title, name });
          return ownLesson(each, shelf, assignments, title) ?? [];
        });
        const made = await Promise.all(texts.map(createLesson));
        told(words.students.lessonsMade({ n: made.length }), () =>
          Promise.all(made.map((lesson) => removeLesson(lesson.id))),
        );
        const [first] = made;
        if (first && made.length === 1) go({ at: 'lesson', id: first.id, view: 'page' });
        else if (first) go({ at: 'desk' });
      }),
    takeIn: (student, log, reports) =>
      attempt(async () => {
        await takeIn(student.id, log, reports);
        await refresh();
      }),
    takeOut: (student, takenAt, entries) =>
      attempt(async () => {
        await takeOut(student.id, takenAt);
        await refresh();
        told(words.students.tookOut({ n: entries }), () => putBack(student.id, takenAt));
      }),
    erase: (student) =>
      attempt(async () => {
        const receipt = await eraseStudent(student.id);
        onErased({ name: student.name, receipt });
        await refresh();
      }),
    noteMinority: ({ id }, minority, said) =>
      attempt(async () => {
        const kept = await noteMinority(id, minority);
        put(kept);
        say(said);
      }),
    setCoach: (student, setting) =>
      attempt(async () => {
        put(await setCoach(student.id, setting));
        told(words.students.changed({ name: student.name }), async () =>
          put(await setCoach(student.id, student.coach)),
        );
      }),
    remove: (student) =>
      attempt(async () => {
        await removeStudent(student.id);
        await refresh();
        told(words.students.removed({ name: student.name }), () => restoreStudent(student.id));
      }),
  };
}
