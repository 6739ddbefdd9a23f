/**
 * What the server keeps, as it is sent.
 *
 * Conventions: moments are ISO 8601 in UTC; a revision counts every change from 1; a step is a place in a lesson's
 * history of texts from 0, so undo goes to `step - 1` and redo to `step + 1`; limits count UTF-16 code units.
 */
import { LESSON_STYLES, LONGEST_LESSON, SET_UPS } from '@shedbook/core';
import { LEVELS } from '@shedbook/judge';
import * as z from 'zod/mini';
import { storedAssignment } from './assignment.ts';
import { sentTake } from './takes.ts';
import { teacher } from './teachers.ts';

/** Text of a lesson file. */
export const lessonText = z.string().check(z.maxLength(LONGEST_LESSON), z.describe('text of a lesson file'));

const revision = z.int().check(z.describe('counts every change, from 1'));
const moment = z.string().check(z.describe('ISO 8601, in UTC'));
const studentName = z.string().check(z.minLength(1), z.maxLength(200));

/** A lesson as it is kept: its text is the only truth about it. */
export const storedLesson = z.readonly(
  z.object({
    id: z.string(),
    text: z.string().check(z.describe('text of a lesson file')),
    revision,
    step: z.int().check(z.describe('place in the history of texts, from 0')),
    lastStep: z.int().check(z.describe('last step that redo can reach')),
    createdAt: moment,
    updatedAt: moment,
  }),
);

/** A lesson as it is kept. */
export type StoredLesson = z.output<typeof storedLesson>;

const level = z.enum(LEVELS).check(z.describe('how strictly the playing is judged'));
const shelfName = z.string().check(z.trim(), z.minLength(1), z.maxLength(100));

/** Where a teacher files a lesson: no part of its text. */
const filing = {
  level: z.nullable(z.enum(LEVELS)).check(z.describe('whom it is for; null where nobody has said so')),
  shelves: z
    .readonly(z.array(shelfName).check(z.maxLength(50)))
    .check(z.describe("names of the teacher's own shelves that it stands on")),
  isArchived: z.boolean().check(z.describe('whether it is out of the way')),
};

/** Where a teacher files a lesson. */
export const lessonFiling = z.readonly(z.strictObject(filing));

/** Where a teacher files a lesson. */
export type LessonFiling = z.output<typeof lessonFiling>;

/** A lesson as the list shows it: what is in its text, and where it is filed. */
export const lessonSummary = z.readonly(
  z.object({
    id: z.string(),
    ...filing,
    title: z.nullable(z.string()),
    by: z.nullable(z.string()),
    exercises: z.int().check(z.describe('how many it has')),
    errors: z.int().check(z.describe('how many problems keep it from being read')),
    style: z
      .nullable(z.enum(LESSON_STYLES))
      .check(z.describe('what it is played in; null where it cannot be read')),
    finds: z.string().check(z.describe('what else a search finds: headings, and names of exercises')),
    plays: z
      .nullable(z.string())
      .check(z.describe('the same for lessons that play the same; null where there is nothing to play')),
    revision,
    createdAt: moment,
    updatedAt: moment,
  }),
);

/** A lesson as the list shows it. */
export type LessonSummary = z.output<typeof lessonSummary>;

/** How a text came about: a new step, or a move along the history. */
export const saveCause = z.enum(['edit', 'undo', 'redo']);

/** How a text came about. */
export type SaveCause = z.output<typeof saveCause>;

/** Asks to keep a text that was made from a revision. */
export const saveRequest = z.readonly(z.strictObject({ text: lessonText, revision, cause: saveCause }));

/** Asks to keep a text. */
export type SaveRequest = z.output<typeof saveRequest>;

/** One text of a lesson's history. */
export const historyStep = z.readonly(z.object({ step: z.int(), text: z.string() }));

/** One text of a lesson's history. */
export type HistoryStep = z.output<typeof historyStep>;

/** Lasting names of a lesson that something refers to, so that an edit has to keep them. */
export const namesInUse = z.readonly(
  z.object({
    lesson: z.boolean().check(z.describe('whether anything refers to the lesson by its name')),
    exercises: z
      .readonly(z.array(z.string()))
      .check(
        z.describe('lasting names of exercises that were practised, set for somebody, copied or given out'),
      ),
  }),
);

/** Lasting names of a lesson that something refers to. */
export type NamesInUse = z.output<typeof namesInUse>;

/** The pages of a lesson as it is kept at a revision. */
export const sheetPages = z.readonly(
  z.object({
    revision,
    pages: z.readonly(z.array(z.string())).check(z.describe('an SVG document for each page')),
  }),
);

/** The pages of a lesson as it is kept at a revision. */
export type SheetPages = z.output<typeof sheetPages>;

const setUp = z
  .nullable(z.enum(SET_UPS))
  .check(z.describe('which way round their drums stand; null: as each lesson says'));

const content = {
  name: studentName,
  assignments: z.readonly(z.array(storedAssignment).check(z.maxLength(500))),
  level,
  setUp,
};

/** What can be changed about a student. */
export const studentContent = z.readonly(z.strictObject(content));

/** What can be changed about a student. */
export type StudentContent = z.output<typeof studentContent>;

/** Asks for a student with a name. */
export const createStudentRequest = z.readonly(z.strictObject({ name: studentName }));

/** Asks to keep what was made of a student at a revision; level and set-up stay as they are where none is sent. */
export const saveStudentRequest = z.readonly(
  z.strictObject({ ...content, level: z.optional(level), setUp: z.optional(setUp), revision }),
);

/** Asks to keep a student. */
export type SaveStudentRequest = z.output<typeof saveStudentRequest>;

const guardian = z.string().check(z.trim(), z.minLength(1), z.maxLength(200));

/** Whether a guardian decides about recordings of a student, and whether they have. */
export const minority = z.readonly(
  z.object({
    isMinor: z.boolean().check(z.describe('whether nothing is recorded before a guardian has consented')),
    consent: z
      .nullable(z.readonly(z.object({ by: guardian, notedAt: moment })))
      .check(z.describe('who consented to recordings, and when that was noted; null where nobody has')),
  }),
);

/** Notes whether a guardian decides, and who consented; null where nobody has, or has no longer. */
export const minorityRequest = z.readonly(
  z.strictObject({ isMinor: z.boolean(), consentBy: z.nullable(guardian) }),
);

/** Notes whether a guardian decides, and who consented. */
export type MinorityRequest = z.output<typeof minorityRequest>;

/** Whether a student may be recorded: a minor once a guardian has consented. */
export function mayRecord({ isMinor, consent }: z.output<typeof minority>): boolean {
  return !isMinor || consent !== null;
}

/** Whether the coach proposes anything to a student: always, not before a day, or never. */
export const coach = z.readonly(
  z.strictObject({
    state: z.enum(['on', 'paused', 'off']),
    until: z
      .nullable(z.iso.date())
      .check(
        z.describe('the day from which it proposes again where it is paused; null where nobody has said'),
      ),
  }),
);

/** Whether the coach proposes anything to a student. */
export type CoachSetting = z.output<typeof coach>;

/** A student as they are kept; their practice is read apart. */
export const storedStudent = z.readonly(
  z.object({
    id: z.string(),
    ...content,
    lastRow: z.int().check(z.describe('newest row of the practice; 0 where there is none')),
    rows: z.int().check(z.describe('how many rows the practice has')),
    lastPlayedAt: z
      .nullable(z.string())
      .check(z.describe('when the last entry began, with its offset from UTC')),
    minority,
    coach,
    revision,
    createdAt: moment,
    updatedAt: moment,
  }),
);

/** A student as they are kept. */
export type StoredStudent = z.output<typeof storedStudent>;

/** Students that are sent at once: everybody, for a teacher alone. */
export const ROSTER_PAGE = 60;

/** A part of the roster. */
export const rosterPage = z.readonly(
  z.object({
    students: z.readonly(z.array(storedStudent)),
    of: z.int().check(z.describe('how many were asked for, on this part and all others')),
    next: z
      .nullable(z.string())
      .check(z.describe('place after which there are more; null where there is none')),
  }),
);

/** A part of the roster. */
export type RosterPage = z.output<typeof rosterPage>;

/** Who is on the roster, and which lessons something was set of for them. */
export const rosterName = z.readonly(
  z.object({
    id: z.string(),
    name: studentName,
    lessons: z.readonly(z.array(z.string())).check(z.describe('ids of lessons')),
  }),
);

/** Who is on the roster, and which lessons something was set of for them. */
export type RosterName = z.output<typeof rosterName>;

/** What needs an ear first. */
export const inbox = z.readonly(
  z.object({
    takes: z
      .readonly(z.array(z.readonly(z.object({ name: studentName, take: sentTake }))))
      .check(z.describe('what nobody has listened to: who asked first, then who has waited longest')),
    takesOf: z.int().check(z.describe('how many there are')),
    away: z
      .readonly(
        z.array(z.readonly(z.object({ id: z.string(), name: studentName, lastPlayedAt: z.string() }))),
      )
      .check(z.describe('who has not played since, the longest first')),
    awayOf: z.int().check(z.describe('how many they are')),
  }),
);

/** What needs an ear first. */
export type Inbox = z.output<typeof inbox>;

/** What was erased of a student, without a name: whoever erased them keeps it, nobody else does. */
export const receipt = z.readonly(
  z.object({
    erasedAt: moment,
    rows: z.int().check(z.describe('rows of practice')),
    assignments: z.int().check(z.describe('exercises that were set')),
    takes: z.int().check(z.describe('recordings that were sent')),
    takeBytes: z.int().check(z.describe('bytes of those recordings')),
    voices: z.int().check(z.describe('notes that the teacher spoke')),
    hours: z.int().check(z.describe('dated lessons, with the notes on them')),
    links: z.int().check(z.describe('private links that held')),
  }),
);

/** What was erased of a student. */
export type Receipt = z.output<typeof receipt>;

/** UTF-16 code units that one row of a student's practice has at most. */
export const LOG_ROW_CHARACTERS = 4_000_000;

const logVersion = z.int().check(z.describe('version of the log that a row came from'));
const logText = z.string().check(z.maxLength(LOG_ROW_CHARACTERS));

/** A part of a student's practice: rows are only ever added, so what was read once is read from there on. */
export const logPage = z.readonly(
  z.object({
    rows: z.readonly(
      z.array(
        z.readonly(
          z.object({
            row: z.int().check(z.describe('counts every row that was added')),
            version: logVersion,
            text: logText.check(
              z.describe('JSON: an entry, `{ "removed": ID }`, or what could not be read when it came'),
            ),
            takenAt: moment.check(z.describe('when it was taken in')),
            isSound: z.boolean().check(z.describe('whether it is still as it was written')),
          }),
        ),
      ),
    ),
    next: z.nullable(z.int()).check(z.describe('row after which there is more; null where there is none')),
  }),
);

/** A part of a student's practice. */
export type LogPage = z.output<typeof logPage>;

/** A lesson that is there and cannot be read. */
export const damagedLesson = z.readonly(
  z.object({
    id: z.string(),
    title: z
      .nullable(z.string())
      .check(z.describe('as it was last summed up; null where that is damaged, too')),
  }),
);

/** A lesson that is there and cannot be read. */
export type DamagedLesson = z.output<typeof damagedLesson>;

/** What was put away and can be brought back, last put away first. */
export const binContent = z.readonly(
  z.object({
    lessons: z.readonly(
      z.array(z.readonly(z.object({ id: z.string(), text: z.string(), removedAt: moment }))),
    ),
    books: z.readonly(
      z.array(z.readonly(z.object({ id: z.string(), title: z.string(), removedAt: moment }))),
    ),
    students: z.readonly(
      z.array(z.readonly(z.object({ id: z.string(), name: z.string(), removedAt: moment }))),
    ),
    practice: z.readonly(
      z.array(
        z.readonly(
          z.object({
            student: z.string().check(z.describe('id of the student')),
            name: z.string(),
            takenAt: moment.check(z.describe('when it was taken in, by which it is found again')),
            rows: z.int(),
            removedAt: moment,
          }),
        ),
      ),
    ),
  }),
);

/** What was put away and can be brought back. */
export type BinContent = z.output<typeof binContent>;

/** Asks to add to a student's practice; what is there already, letter for letter, is left out. */
export const logRequest = z.readonly(
  z.strictObject({ version: logVersion, rows: z.readonly(z.array(logText).check(z.maxLength(10_000))) }),
);

/** Asks to add to a student's practice. */
export type LogRequest = z.output<typeof logRequest>;

/** What came of it. */
export const logTakenIn = z.readonly(z.object({ added: z.int().check(z.describe('how many rows are new')) }));

/** What came of it. */
export type LogTakenIn = z.output<typeof logTakenIn>;

/** A private link as it is kept: its secret is told once, when it is made. */
export const storedLink = z.readonly(
  z.object({
    id: z.string(),
    madeAt: moment,
    usedAt: z.nullable(moment).check(z.describe('when it was last opened; null before the first time')),
  }),
);

/** A private link as it is kept. */
export type StoredLink = z.output<typeof storedLink>;

/** A private link that was made just now. */
export const madeLink = z.readonly(
  z.object({
    link: storedLink,
    address: z.string().check(z.describe('what the student opens; it is told only now')),
    codeSvg: z.string().check(z.describe('the address as a code to scan, an SVG document')),
  }),
);

/** A private link that was made just now. */
export type MadeLink = z.output<typeof madeLink>;

/** Whether the desk asks who comes: `open` where nobody has to sign in, else whether this browser has. */
export const session = z.readonly(
  z.object({
    state: z.enum(['open', 'out', 'in']),
    school: z
      .optional(z.readonly(z.object({ teacher: z.nullable(teacher).check(z.describe('who signed in')) })))
      .check(z.describe('there where there are several teachers')),
    hasPasskeys: z
      .optional(z.boolean())
      .check(z.describe('whether anybody has a passkey; there where this address allows of some')),
  }),
);

/** Whether the desk asks who comes, and who came. */
export type Session = z.output<typeof session>;

/** What was set for a student, from any lesson, in the teacher's order. */
export const week = z.readonly(
  z.object({
    student: z.readonly(z.object({ id: z.string(), name: z.string() })),
    level,
    setUp: z.optional(setUp),
    coach: z._default(coach, { state: 'on', until: null }),
    lessons: z.readonly(
      z.array(
        z.readonly(
          z.object({
            id: z
              .string()
              .check(z.describe('lasting name of the lesson, and the folder that its page lies in')),
            title: z.string(),
          }),
        ),
      ),
    ),
    assignments: z.readonly(z.array(storedAssignment)),
    mayRecord: z
      .boolean()
      .check(z.describe('whether the microphone may be used: no before a guardian has consented')),
    passes: z
      .readonly(z.array(logText))
      .check(z.describe('what the teacher passed: entries of a practice log, JSON')),
    takes: z
      .readonly(z.array(sentTake))
      .check(z.describe('what the student sent, the newest first, with what the teacher made of it')),
  }),
);

/** What was set for a student. */
export type Week = z.output<typeof week>;

/** A picture, sound or video that was kept. */
export const keptMedium = z.readonly(
  z.object({ path: z.string().check(z.describe('what a lesson names it by')) }),
);
