/** The progress page of a student. */

import { fileNameOf } from '@shedbook/core';
import { FILE_FORMATS } from '@shedbook/pack/serving';
import type { SheetMaker } from '../sheet/sheet-maker.ts';
import type { LessonStore } from '../store/lessons.ts';
import type { StudentStore } from '../store/students.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** What the page is made with. */
export interface ProgressParts {
  readonly store: LessonStore;
  readonly students: StudentStore;
  readonly sheets: SheetMaker;
}

/** Answers the route of the progress page. */
export function progressHandlers({ store, students, sheets }: ProgressParts) {
  return {
    printProgress: async ({ params: { id }, query }, signal) => {
      const student = await students.read(id);
      if (!student) return refuse('no-such-student', {});
      const rows = await students.rows(id);
      const lessons = (await store.list()).map((lesson) => ({ id: lesson.id, text: lesson.text }));
      const { name, assignments, setUp } = student;
      const order = { ...query, name, assignments, setUp, lessons, rows };
      const { title, bytes } = await sheets.progress(order, { of: id, signal });
      const { ending, type } = FILE_FORMATS.sheet;
      return answer({ name: fileNameOf(title, ending), type, content: bytes });
    },
  } satisfies Partial<Handlers>;
}
