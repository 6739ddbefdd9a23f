/** What the desk asks of the server about students. */
import { PRACTICE_LOG_VERSION, type PracticeLog } from '@shedbook/core';
import {
  type CoachSetting,
  type HourList,
  type HourRequest,
  type Inbox,
  type JournalPage,
  type Keeping,
  type KeptTakes,
  type ListedTeacher,
  LOG_ROW_CHARACTERS,
  type MadeLink,
  type MinorityRequest,
  type Receipt,
  type RosterPage,
  type SchoolStudent,
  type SentTake,
  type Session,
  type StoredAssignment,
  type StoredHour,
  type StoredLink,
  type StoredStudent,
  type StudentContent,
  type TakeOpinion,
} from '@shedbook/routes';
import type { LanguageTag } from '@shedbook/words';
import { ask, RefusedError } from '../document/client.ts';
import { inParts, type KeptReport, type LogRow, rowsOf } from './kept-log.ts';

/** A part of the roster: of those whose names have the words. @param after place after which it goes on */
export function listStudents(find: string, after: string | null): Promise<RosterPage> {
  return ask('listStudents', { query: { find, ...(after === null ? {} : { after }) } });
}

/** A student. */
export function readStudent(id: string): Promise<StoredStudent> {
  return ask('readStudent', { params: { id } });
}

/** A new student. */
export function createStudent(name: string): Promise<StoredStudent> {
  return ask('createStudent', { body: { name } });
}

/** Notes whether a guardian decides about recordings of a student, and who consented. */
export function noteMinority(id: string, minority: MinorityRequest): Promise<StoredStudent> {
  return ask('noteMinority', { params: { id }, body: minority });
}

/** Takes a student off the roster; they can be brought back. */
export async function removeStudent(id: string): Promise<void> {
  await ask('removeStudent', { params: { id } });
}

/** Brings a student back. */
export function restoreStudent(id: string): Promise<StoredStudent> {
  return ask('restoreStudent', { params: { id } });
}

/** Erases a student with everything that is kept of them. @returns what it was */
export function eraseStudent(id: string): Promise<Receipt> {
  return ask('eraseStudent', { params: { id } });
}

/** Private links of a student that hold. */
export function listLinks(id: string): Promise<readonly StoredLink[]> {
  return ask('listLinks', { params: { id } });
}

/** Makes a private link, in the language that its pages speak. */
export function makeLink(id: string, language: LanguageTag): Promise<MadeLink> {
  return ask('makeLink', { params: { id }, query: { language } });
}

/** Takes a private link back. */
export async function revokeLink(id: string): Promise<void> {
  await ask('revokeLink', { params: { id } });
}

/** What needs an ear first. @param playedBefore who played last before it has not played for a while */
export function readInbox(playedBefore: Date): Promise<Inbox> {
  return ask('readInbox', { query: { playedBefore: playedBefore.toISOString() } });
}

/** Takes that a student sent. */
export function listTakes(id: string): Promise<readonly SentTake[]> {
  return ask('listTakes', { params: { id } });
}

/** The file of a take. */
export async function readTake({ student, facts }: SentTake): Promise<Blob> {
  return (await ask('readTake', { params: { id: student, take: facts.id } })).file;
}

/** Keeps what the teacher makes of a take. */
export async function answerTake({ student, facts }: SentTake, opinion: TakeOpinion): Promise<void> {
  await ask('answerTake', { params: { id: student, take: facts.id }, body: opinion });
}

/** Keeps a take however old it gets, or no longer. */
export async function keepTake({ student, facts }: SentTake, isKept: boolean): Promise<void> {
  await ask('keepTake', { params: { id: student, take: facts.id }, body: { isKept } });
}

/** How long takes are kept. */
export function readKeeping(): Promise<KeptTakes> {
  return ask('readKeeping', {});
}

/** Sets how long takes are kept. */
export function saveKeeping(keeping: Keeping): Promise<KeptTakes> {
  return ask('saveKeeping', { body: keeping });
}

/** A part of the journal. @param after place after which it goes on */
export function readJournal(after: string | null): Promise<JournalPage> {
  return ask('readJournal', { query: after === null ? {} : { after } });
}

/** Sets whether the coach proposes anything to a student. */
export function setCoach(id: string, setting: CoachSetting): Promise<StoredStudent> {
  return ask('setCoach', { params: { id }, body: setting });
}

/** What a spoken note is about; null: the whole of a take. */
function atBar(bar: number | null) {
  return bar === null ? {} : { bar };
}

/** Keeps what the teacher says of a take, or of one bar of it, an MP3 file. */
export async function sayVoice({ student, facts }: SentTake, bar: number | null, body: Blob): Promise<void> {
  await ask('sayVoice', { params: { id: student, take: facts.id }, query: atBar(bar), body });
}

/** What the teacher said of a take, or of one bar of it. */
export async function hearVoice({ student, facts }: SentTake, bar: number | null): Promise<Blob> {
  return (await ask('hearVoice', { params: { id: student, take: facts.id }, query: atBar(bar) })).file;
}

/** Takes back what the teacher said of a take, or of one bar of it. */
export async function unsayVoice({ student, facts }: SentTake, bar: number | null): Promise<void> {
  await ask('unsayVoice', { params: { id: student, take: facts.id }, query: atBar(bar) });
}

/** The dated lessons of a student. */
export function listHours(id: string): Promise<HourList> {
  return ask('listHours', { params: { id } });
}

/** What is in an hour; what is set of it is changed where an hour is brought back. */
type HourChange = Partial<Omit<HourRequest, 'revision'>>;

/** Changes an hour; where it was changed elsewhere meanwhile, what is kept there is changed instead. @param known as it was read, null where there was none */
export async function changeHour(
  id: string,
  day: string,
  known: StoredHour | null,
  change: HourChange,
): Promise<StoredHour> {
  const { attendance = 'planned', done = '', notes = '' } = { ...known, ...change };
  const set = change.set ? { set: change.set } : {};
  const body = { attendance, done, notes, ...set, revision: known?.revision ?? 0 };
  try {
    return await ask('saveHour', { params: { id, day }, body });
  } catch (error) {
    if (!(error instanceof RefusedError) || error.refusal.code !== 'hour-changed') throw error;
    const { kept } = error.refusal.values;
    if (kept === null && known === null) throw error;
    return changeHour(id, day, kept, change);
  }
}

/** Erases an hour at once. */
export async function eraseHour(id: string, day: string): Promise<void> {
  await ask('eraseHour', { params: { id, day } });
}

/** Sets a student something in an hour, in place of what was set before. */
export function setInHour(
  { id, revision }: StoredStudent,
  day: string,
  assignments: readonly StoredAssignment[],
): Promise<{ readonly student: StoredStudent; readonly hour: StoredHour }> {
  return ask('setInHour', { params: { id, day }, body: { assignments, revision } });
}

/** The rows of a student's practice after one. */
export async function readRowsAfter(id: string, row: number): Promise<readonly LogRow[]> {
  const rows: LogRow[] = [];
  let after: number | null = row;
  while (after !== null) {
    const page: Awaited<ReturnType<typeof ask<'readLog'>>> = await ask('readLog', {
      params: { id },
      query: { after },
    });
    rows.push(...page.rows);
    after = page.next;
  }
  return rows;
}

/** Adds to a student's practice, with reports of recordings. @returns how many rows are new */
export async function takeIn(
  id: string,
  log: PracticeLog,
  reports: readonly KeptReport[] = [],
): Promise<number> {
  let added = 0;
  for (const rows of inParts(rowsOf(log, reports), LOG_ROW_CHARACTERS)) {
    const body = { version: PRACTICE_LOG_VERSION, rows };
    added += (await ask('takeInLog', { params: { id }, body })).added;
  }
  return added;
}

/** Takes out of a student's practice what was taken in at a time; it can be put back. */
export async function takeOut(id: string, takenAt: string): Promise<void> {
  await ask('takeOutLog', { params: { id, takenAt } });
}

/** Puts back what was taken out. */
export async function putBack(id: string, takenAt: string): Promise<void> {
  await ask('putBackLog', { params: { id, takenAt } });
}

/** Changes a student; where they were changed elsewhere meanwhile, what is kept there is changed instead. */
export async function changeStudent(
  student: StoredStudent,
  change: (content: StudentContent) => StudentContent,
): Promise<StoredStudent> {
  const { id, revision } = student;
  const { name, assignments, level, setUp } = change(student);
  try {
    return await ask('saveStudent', { params: { id }, body: { name, assignments, level, setUp, revision } });
  } catch (error) {
    if (!(error instanceof RefusedError) || error.refusal.code !== 'student-changed') throw error;
    return changeStudent(error.refusal.values.kept, change);
  }
}

/** Whether the desk asks who comes, and who came. */
export function readSession(): Promise<Session> {
  return ask('readSession', {});
}

/** The teachers of a school, and the names of everybody's students. */
export interface School {
  readonly teachers: readonly ListedTeacher[];
  readonly students: readonly SchoolStudent[];
}

/** The teachers of the school and whose students are whose, as a head reads it. */
export async function readSchool(): Promise<School> {
  const [teachers, students] = await Promise.all([ask('listTeachers', {}), ask('listSchool', {})]);
  return { teachers, students };
}
