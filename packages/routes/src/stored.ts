/**
 * What the server keeps, as it is sent.
 *
 * Conventions: moments are ISO 8601 in UTC; a revision counts every change from 1; a step is a place in a lesson's
 * history of texts from 0, so undo goes to `step - 1` and redo to `step + 1`; limits count UTF-16 code units.
 */
import { LONGEST_LESSON } from '@shedbook/core';
import { LEVELS } from '@shedbook/judge';
import { z } from 'zod';

/** Text of a lesson file. */
export const lessonText = z.string().max(LONGEST_LESSON).describe('text of a lesson file');

const revision = z.int().describe('counts every change, from 1');
const moment = z.string().describe('ISO 8601, in UTC');
const studentName = z.string().min(1).max(200);

/** A lesson as it is kept: its text is the only truth about it. */
export const storedLesson = z
  .object({
    id: z.string(),
    text: z.string().describe('text of a lesson file'),
    revision,
    step: z.int().describe('place in the history of texts, from 0'),
    lastStep: z.int().describe('last step that redo can reach'),
    createdAt: moment,
    updatedAt: moment,
  })
  .readonly();

/** A lesson as it is kept. */
export type StoredLesson = z.output<typeof storedLesson>;

/** How a text came about: a new step, or a move along the history. */
export const saveCause = z.enum(['edit', 'undo', 'redo']);

/** How a text came about. */
export type SaveCause = z.output<typeof saveCause>;

/** Asks to keep a text that was made from a revision. */
export const saveRequest = z.strictObject({ text: lessonText, revision, cause: saveCause }).readonly();

/** Asks to keep a text. */
export type SaveRequest = z.output<typeof saveRequest>;

/** One text of a lesson's history. */
export const historyStep = z.object({ step: z.int(), text: z.string() }).readonly();

/** One text of a lesson's history. */
export type HistoryStep = z.output<typeof historyStep>;

/** Lasting names of a lesson that something refers to, so that an edit has to keep them. */
export const namesInUse = z
  .object({
    lesson: z.boolean().describe('whether anything refers to the lesson by its name'),
    exercises: z
      .array(z.string())
      .readonly()
      .describe('lasting names of exercises that were practised, set for somebody, copied or given out'),
  })
  .readonly();

/** Lasting names of a lesson that something refers to. */
export type NamesInUse = z.output<typeof namesInUse>;

/** The pages of a lesson as it is kept at a revision. */
export const sheetPages = z
  .object({ revision, pages: z.array(z.string()).readonly().describe('an SVG document for each page') })
  .readonly();

/** The pages of a lesson as it is kept at a revision. */
export type SheetPages = z.output<typeof sheetPages>;

/** What a teacher set a student to practise. The exercise is named by what it plays, so that it outlives its number. */
export const storedAssignment = z
  .strictObject({
    lesson: z.string().max(200).describe('id of the lesson'),
    exercise: z.string().max(10_000).describe('what the exercise plays'),
    pinned: z.boolean().describe('stands in every plan until it is taken out'),
    note: z.string().max(2_000).nullable(),
  })
  .readonly();

/** What a teacher set a student to practise. */
export type StoredAssignment = z.output<typeof storedAssignment>;

const level = z.enum(LEVELS).describe('how strictly the playing is judged');

const content = {
  name: studentName,
  assignments: z.array(storedAssignment).max(500).readonly(),
  level,
};

/** What can be changed about a student. */
export const studentContent = z.strictObject(content).readonly();

/** What can be changed about a student. */
export type StudentContent = z.output<typeof studentContent>;

/** Asks for a student with a name. */
export const createStudentRequest = z.strictObject({ name: studentName }).readonly();

/** Asks to keep what was made of a student at a revision; the level stays as it is where none is sent. */
export const saveStudentRequest = z
  .strictObject({ ...content, level: level.optional(), revision })
  .readonly();

/** Asks to keep a student. */
export type SaveStudentRequest = z.output<typeof saveStudentRequest>;

/** A student as they are kept; their practice is read apart. */
export const storedStudent = z
  .object({
    id: z.string(),
    ...content,
    lastRow: z.int().describe('newest row of the practice; 0 where there is none'),
    lastPlayedAt: z.string().nullable().describe('when the last entry began, with its offset from UTC'),
    revision,
    createdAt: moment,
    updatedAt: moment,
  })
  .readonly();

/** A student as they are kept. */
export type StoredStudent = z.output<typeof storedStudent>;

/** UTF-16 code units that one row of a student's practice has at most. */
export const LOG_ROW_CHARACTERS = 4_000_000;

const logVersion = z.int().describe('version of the log that a row came from');
const logText = z.string().max(LOG_ROW_CHARACTERS);

/** A part of a student's practice: rows are only ever added, so what was read once is read from there on. */
export const logPage = z
  .object({
    rows: z
      .array(
        z
          .object({
            row: z.int().describe('counts every row that was added'),
            version: logVersion,
            text: logText.describe(
              'JSON: an entry, `{ "removed": ID }`, or what could not be read when it came',
            ),
            isSound: z.boolean().describe('whether it is still as it was written'),
          })
          .readonly(),
      )
      .readonly(),
    next: z.int().nullable().describe('row after which there is more; null where there is none'),
  })
  .readonly();

/** A part of a student's practice. */
export type LogPage = z.output<typeof logPage>;

/** Asks to add to a student's practice; what is there already, letter for letter, is left out. */
export const logRequest = z
  .strictObject({ version: logVersion, rows: z.array(logText).max(10_000).readonly() })
  .readonly();

/** Asks to add to a student's practice. */
export type LogRequest = z.output<typeof logRequest>;

/** What came of it. */
export const logTakenIn = z.object({ added: z.int().describe('how many rows are new') }).readonly();
