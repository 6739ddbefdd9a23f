/**
 * Teachers of a school. One who is alone is the first, the head of a school of one, and meets none of this.
 */
import * as z from 'zod/mini';

/** Id of the teacher to whom everything belongs that was there before there were several. */
export const FIRST_TEACHER = 'first';

/** What teachers may do: a head also lets teachers in and hands students over. */
export const ROLES = ['head', 'teacher'] as const;

/** Characters that a passphrase has at least. Source: NIST SP 800-63B, section 5.1.1.1, asks for eight. */
export const SHORTEST_PASSPHRASE = 10;

/** Characters that one has at most: more would only cost time. */
export const LONGEST_PASSPHRASE = 1000;

/** Characters that the name of a teacher has at most. */
export const LONGEST_NAME = 80;

/** What a teacher is called. */
export const teacherName = z.string().check(z.trim(), z.minLength(1), z.maxLength(LONGEST_NAME));

const role = z.enum(ROLES);

/** A teacher. */
export const teacher = z.readonly(
  z.object({
    id: z.string(),
    name: z.string().check(z.describe('empty where the first teacher never said it')),
    role,
  }),
);

/** A teacher. */
export type Teacher = z.output<typeof teacher>;

/** A teacher in the head's list. */
export const listedTeacher = z.readonly(
  z.object({
    id: z.string(),
    name: z.string(),
    role,
    students: z.int().check(z.describe('how many are on their roster')),
    hasJoined: z.boolean().check(z.describe('whether they ever chose a passphrase')),
  }),
);

/** A teacher in the head's list. */
export type ListedTeacher = z.output<typeof listedTeacher>;

/** Asks to call a teacher something, and what they may do. */
export const writtenTeacher = z.readonly(z.strictObject({ name: teacherName, role }));

/** What a teacher is called and may do. */
export type WrittenTeacher = z.output<typeof writtenTeacher>;

/** A letter to a teacher. */
export const invitation = z.readonly(
  z.object({
    teacher,
    address: z
      .string()
      .check(z.describe('opens the desk once, for two weeks, to choose a passphrase; told here only')),
  }),
);

/** A student of somebody in the school, as the head sees them: a name, and nothing else. */
export const schoolStudent = z.readonly(
  z.object({
    id: z.string(),
    name: z.string(),
    teacher: z.string().check(z.describe('id of their teacher')),
  }),
);

/** A student of somebody in the school. */
export type SchoolStudent = z.output<typeof schoolStudent>;

/** A passphrase that somebody chooses. */
export const chosenPassphrase = z
  .string()
  .check(z.minLength(SHORTEST_PASSPHRASE), z.maxLength(LONGEST_PASSPHRASE));
