/** Dated lessons, as tests write and read them. */
import type { HourList, StoredStudent } from '@shedbook/routes';
import { send } from './temporary.ts';

/** What nobody but the teacher reads. */
export const NOTES = 'Wrist is tense: ask at home. Not for them.';

/** The day of a dated lesson. */
export const DAY = '2026-11-29';

/** A student on the roster. */
export async function newStudent(server: { readonly url: string }, name = 'Bram'): Promise<StoredStudent> {
  return (await send(server, 'POST', '/api/students', { name })).body as StoredStudent;
}

/** What a teacher writes of a dated lesson. */
export function wrote(revision: number, done = 'Feathering, then exercise 3.') {
  return { attendance: 'came', done, notes: NOTES, revision };
}

/** A student's dated lessons. */
export async function hoursOf(server: { readonly url: string }, id: string): Promise<HourList> {
  return (await send(server, 'GET', `/api/students/${id}/hours`)).body as HourList;
}
