/**
 * The routes of the server: one table, from which follow what the server registers and checks, what the desk may ask
 * and gets, and `docs/routes.md`.
 */
import { STANDARD_FORMAT_NAMES } from '@shedbook/core';
import { LANGUAGE_TAGS } from '@shedbook/words';
import * as z from 'zod/mini';
import { type Route, route } from './route.ts';
import {
  binContent,
  createStudentRequest,
  historyStep,
  lessonFiling,
  lessonSummary,
  lessonText,
  logPage,
  logRequest,
  logTakenIn,
  namesInUse,
  saveRequest,
  saveStudentRequest,
  sheetPages,
  storedLesson,
  storedStudent,
} from './stored.ts';

const none = z.object({});
const inLanguage = z.object({
  language: z._default(z.enum(LANGUAGE_TAGS), 'en').check(z.describe('language of the printed words')),
});
const byId = z.object({ id: z.string().check(z.maxLength(200)) });
const byTaking = z.extend(byId, {
  takenAt: z.string().check(z.maxLength(40), z.describe('when it was taken in')),
});

function json<Schema extends z.ZodMiniType>(schema: Schema, status: 200 | 201 = 200) {
  return { kind: 'json', status, schema } as const;
}

const file = { kind: 'file' } as const;
const nothing = { kind: 'nothing' } as const;

/** Every route by its name. */
export const ROUTES = {
  listLessons: route({
    method: 'GET',
    path: '/api/lessons',
    does: 'Lists the lessons, last changed first',
    params: none,
    query: none,
    body: null,
    answer: json(z.readonly(z.array(storedLesson))),
    refusals: [],
  }),
  listShelf: route({
    method: 'GET',
    path: '/api/shelf',
    does: 'Lists the lessons as a list shows them, without their texts, last changed first',
    params: none,
    query: none,
    body: null,
    answer: json(z.readonly(z.array(lessonSummary))),
    refusals: [],
  }),
  fileLesson: route({
    method: 'PUT',
    path: '/api/lessons/:id/filing',
    does: 'Files a lesson: level, shelves, archive; its text and its revision stay',
    params: byId,
    query: none,
    body: lessonFiling,
    answer: nothing,
    refusals: ['no-such-lesson'],
  }),
  createLesson: route({
    method: 'POST',
    path: '/api/lessons',
    does: 'Makes a lesson with a text',
    params: none,
    query: none,
    body: z.readonly(z.strictObject({ text: lessonText })),
    answer: json(storedLesson, 201),
    refusals: [],
  }),
  readLesson: route({
    method: 'GET',
    path: '/api/lessons/:id',
    does: 'Reads a lesson',
    params: byId,
    query: none,
    body: null,
    answer: json(storedLesson),
    refusals: ['no-such-lesson'],
  }),
  saveLesson: route({
    method: 'PUT',
    path: '/api/lessons/:id',
    does: 'Keeps a text that was made from a revision',
    params: byId,
    query: none,
    body: saveRequest,
    answer: json(storedLesson),
    refusals: ['no-such-lesson', 'lesson-changed'],
  }),
  readStep: route({
    method: 'GET',
    path: '/api/lessons/:id/steps/:step',
    does: "Reads one text of a lesson's history",
    params: z.object({ id: byId.shape.id, step: z.coerce.number().check(z.int(), z.minimum(0)) }),
    query: none,
    body: null,
    answer: json(historyStep),
    refusals: ['no-such-step'],
  }),
  removeLesson: route({
    method: 'DELETE',
    path: '/api/lessons/:id',
    does: 'Puts a lesson away; for thirty days it can be brought back',
    params: byId,
    query: none,
    body: null,
    answer: nothing,
    refusals: ['no-such-lesson'],
  }),
  eraseLesson: route({
    method: 'DELETE',
    path: '/api/lessons/:id/for-good',
    does: 'Erases a lesson at once, with its history; nothing brings it back',
    params: byId,
    query: none,
    body: null,
    answer: nothing,
    refusals: ['no-such-lesson'],
  }),
  restoreLesson: route({
    method: 'POST',
    path: '/api/lessons/:id/restore',
    does: 'Brings a lesson back',
    params: byId,
    query: none,
    body: null,
    answer: json(storedLesson),
    refusals: ['no-such-lesson'],
  }),
  namesInUse: route({
    method: 'GET',
    path: '/api/lessons/:id/names',
    does: 'Tells which lasting names of a lesson something refers to',
    params: byId,
    query: none,
    body: null,
    answer: json(namesInUse),
    refusals: ['no-such-lesson'],
  }),
  readPages: route({
    method: 'GET',
    path: '/api/lessons/:id/pages',
    does: 'Engraves a lesson as pictures of its pages',
    params: byId,
    query: inLanguage,
    body: null,
    answer: json(sheetPages),
    refusals: ['no-such-lesson', 'lesson-has-errors'],
  }),
  printSheet: route({
    method: 'GET',
    path: '/api/lessons/:id/sheet.pdf',
    does: 'Engraves a lesson as a PDF file',
    params: byId,
    query: inLanguage,
    body: null,
    answer: file,
    refusals: ['no-such-lesson', 'lesson-has-errors'],
  }),
  packLesson: route({
    method: 'GET',
    path: '/api/lessons/:id/practice.zip',
    does: 'Makes the take-home pack of a lesson as a ZIP file, for everybody or with what was set for one student',
    params: byId,
    query: z.extend(inLanguage, {
      student: z
        .optional(z.string().check(z.maxLength(200)))
        .check(z.describe('whose assignments the pack carries')),
    }),
    body: null,
    answer: file,
    refusals: ['no-such-lesson', 'lesson-has-errors'],
  }),
  exportLesson: route({
    method: 'GET',
    path: '/api/lessons/:id/export/:format',
    does: 'Writes a lesson as a standard file',
    params: z.object({ id: byId.shape.id, format: z.enum(STANDARD_FORMAT_NAMES) }),
    query: none,
    body: null,
    answer: file,
    refusals: ['no-such-lesson', 'lesson-has-errors'],
  }),
  importLesson: route({
    method: 'POST',
    path: '/api/import',
    does: 'Makes a lesson of a MusicXML or MIDI file',
    params: none,
    query: z.object({
      name: z._default(z.string().check(z.maxLength(1_000)), 'lesson').check(z.describe('name of the file')),
    }),
    body: 'bytes',
    answer: json(storedLesson, 201),
    refusals: ['unreadable-file'],
  }),
  listStudents: route({
    method: 'GET',
    path: '/api/students',
    does: 'Lists everybody on the roster, in the order in which they came',
    params: none,
    query: none,
    body: null,
    answer: json(z.readonly(z.array(storedStudent))),
    refusals: [],
  }),
  createStudent: route({
    method: 'POST',
    path: '/api/students',
    does: 'Puts a student on the roster',
    params: none,
    query: none,
    body: createStudentRequest,
    answer: json(storedStudent, 201),
    refusals: [],
  }),
  saveStudent: route({
    method: 'PUT',
    path: '/api/students/:id',
    does: 'Keeps what was made of a student at a revision',
    params: byId,
    query: none,
    body: saveStudentRequest,
    answer: json(storedStudent),
    refusals: ['no-such-student', 'student-changed'],
  }),
  removeStudent: route({
    method: 'DELETE',
    path: '/api/students/:id',
    does: 'Takes a student off the roster; for thirty days they can be brought back',
    params: byId,
    query: none,
    body: null,
    answer: nothing,
    refusals: ['no-such-student'],
  }),
  readLog: route({
    method: 'GET',
    path: '/api/students/:id/log',
    does: "Reads a part of a student's practice, from the row after one that was read before",
    params: byId,
    query: z.object({
      after: z
        ._default(z.coerce.number().check(z.int(), z.minimum(0)), 0)
        .check(z.describe('the last row that was read before')),
    }),
    body: null,
    answer: json(logPage),
    refusals: ['no-such-student'],
  }),
  takeInLog: route({
    method: 'POST',
    path: '/api/students/:id/log',
    does: "Adds to a student's practice; nothing of it is ever replaced",
    params: byId,
    query: none,
    body: logRequest,
    answer: json(logTakenIn),
    refusals: ['no-such-student'],
  }),
  takeOutLog: route({
    method: 'DELETE',
    path: '/api/students/:id/log/:takenAt',
    does: "Takes out of a student's practice what was taken in at a time; for thirty days it can be brought back",
    params: byTaking,
    query: none,
    body: null,
    answer: nothing,
    refusals: ['no-such-student'],
  }),
  putBackLog: route({
    method: 'POST',
    path: '/api/students/:id/log/:takenAt/restore',
    does: 'Brings back what was taken out',
    params: byTaking,
    query: none,
    body: null,
    answer: nothing,
    refusals: ['no-such-student'],
  }),
  eraseLog: route({
    method: 'DELETE',
    path: '/api/students/:id/log/:takenAt/for-good',
    does: "Erases at once what was taken in of a student's practice at a time; nothing brings it back",
    params: byTaking,
    query: none,
    body: null,
    answer: nothing,
    refusals: ['no-such-student'],
  }),
  listBin: route({
    method: 'GET',
    path: '/api/bin',
    does: 'Lists what was put away in the last thirty days and can be brought back',
    params: none,
    query: none,
    body: null,
    answer: json(binContent),
    refusals: [],
  }),
  listDamaged: route({
    method: 'GET',
    path: '/api/damaged',
    does: 'Lists the ids of lessons that are there and cannot be read',
    params: none,
    query: none,
    body: null,
    answer: json(z.readonly(z.array(z.string()))),
    refusals: [],
  }),
  eraseStudent: route({
    method: 'DELETE',
    path: '/api/students/:id/for-good',
    does: 'Erases a student at once, with all their practice; nothing brings them back',
    params: byId,
    query: none,
    body: null,
    answer: nothing,
    refusals: ['no-such-student'],
  }),
  restoreStudent: route({
    method: 'POST',
    path: '/api/students/:id/restore',
    does: 'Brings a student back',
    params: byId,
    query: none,
    body: null,
    answer: json(storedStudent),
    refusals: ['no-such-student'],
  }),
} as const satisfies Readonly<Record<string, Route>>;

/** Name of a route. */
export type RouteName = keyof typeof ROUTES;

/** The names, in the order of the table. */
export const ROUTE_NAMES = Object.keys(ROUTES) as readonly RouteName[];

/** The route with a name. */
export type RouteNamed<Name extends RouteName> = (typeof ROUTES)[Name];

/** Codes with which a route may refuse, those of any route included. */
export type CodeOf<Name extends RouteName> = RouteNamed<Name>['refusals'][number];
