/**
 * Hours: dated lessons of one student with the teacher, as they are kept and sent.
 *
 * Conventions: an hour is named by its student and its day, ISO 8601 without a time, where it is held; a student has
 * one a day. What is in it is the teacher's own: no page of a student ever reads it.
 */
import * as z from 'zod/mini';
import { storedAssignment } from './assignment.ts';

/** Whether a student was there: `planned` before the day. */
export const ATTENDANCES = ['planned', 'came', 'missed', 'cancelled'] as const;

/** Whether a student was there. */
export type Attendance = (typeof ATTENDANCES)[number];

/** The day of an hour. */
export const hourDay = z.iso.date().check(z.describe('the day on which it is held'));

const text = z.string().check(z.maxLength(20_000));

/** What a teacher writes of an hour. */
const content = {
  attendance: z.enum(ATTENDANCES).check(z.describe('whether the student was there')),
  done: text.check(z.describe('what was done')),
  notes: text.check(z.describe("the teacher's own notes, which no student reads")),
};

/** Asks to keep what was written of an hour at a revision; 0 where there was none yet. */
export const hourRequest = z.readonly(
  z.strictObject({
    ...content,
    set: z
      .optional(z.readonly(z.array(storedAssignment).check(z.maxLength(500))))
      .check(z.describe('what was set in it, where one that was erased is brought back; else it stays')),
    revision: z.int().check(z.minimum(0), z.describe('0 before the first')),
  }),
);

/** Asks to keep an hour. */
export type HourRequest = z.output<typeof hourRequest>;

/** An hour as it is kept. */
export const storedHour = z.readonly(
  z.object({
    day: hourDay,
    ...content,
    set: z
      .readonly(z.array(storedAssignment))
      .check(z.describe('what was set in it, up to which tempo and for which day')),
    revision: z.int().check(z.describe('counts every change, from 1')),
    updatedAt: z.string().check(z.describe('ISO 8601, in UTC')),
  }),
);

/** An hour as it is kept. */
export type StoredHour = z.output<typeof storedHour>;

/** The hours of a student, the last first. */
export const hourList = z.readonly(
  z.object({
    hours: z.readonly(z.array(storedHour)),
    damaged: z.readonly(z.array(hourDay)).check(z.describe('days whose hour is there and cannot be read')),
  }),
);

/** The hours of a student. */
export type HourList = z.output<typeof hourList>;

/** Asks to set a student something in an hour, in place of what was set before. */
export const setListRequest = z.readonly(
  z.strictObject({
    assignments: z.readonly(z.array(storedAssignment).check(z.maxLength(500))),
    revision: z.int().check(z.describe('of the student')),
  }),
);

/** Asks to set a student something in an hour. */
export type SetListRequest = z.output<typeof setListRequest>;
