import { ROUTE_NAMES } from '@shedbook/routes';
import { expect, it } from 'vitest';
import type { ImportMaker } from '../files/import-maker.ts';
import type { SheetMaker } from '../sheet/sheet-maker.ts';
import type { LessonStore } from '../store/lessons.ts';
import type { StudentStore } from '../store/students.ts';
import { fileHandlers } from './file-handlers.ts';
import type { Handlers } from './handlers.ts';
import { lessonHandlers } from './lesson-handlers.ts';
import { studentHandlers } from './student-handlers.ts';

it('[RO3] answers every route of the table and compiles with none left out', () => {
  const sheets = {} as SheetMaker;
  const store = {} as LessonStore;
  const students = {} as StudentStore;
  const handlers = {
    ...lessonHandlers(store, students, sheets),
    ...studentHandlers(students),
    ...fileHandlers({ store, students, sheets, packs: sheets, imports: {} as ImportMaker }),
  };
  const whole: Handlers = handlers;
  expect(Object.keys(whole).toSorted()).toEqual(ROUTE_NAMES.toSorted());
  const { readPages, ...lacking } = handlers;
  // @ts-expect-error: readPages is not answered
  const refused: Handlers = lacking;
  expect(refused).not.toHaveProperty(readPages.name);
});
