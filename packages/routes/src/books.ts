/**
 * Books: lessons of the desk one after another, printed and packed as one.
 *
 * Conventions: a chapter names its lesson by its lasting id; one whose lesson is gone stays until somebody takes it out.
 */
import { PAPERS } from '@shedbook/core';
import * as z from 'zod/mini';

/** The most chapters of a book. */
export const MOST_CHAPTERS = 200;

const line = z.string().check(z.minLength(1), z.maxLength(200));

const chapter = z.readonly(
  z.strictObject({
    lesson: z.string().check(z.maxLength(200), z.describe('id of the lesson')),
    title: z.nullable(line).check(z.describe('printed over it; null for the title of the lesson')),
    sections: z
      .optional(
        z.nullable(z.readonly(z.array(z.union([line, z.int()])).check(z.minLength(1), z.maxLength(200)))),
      )
      .check(z.describe('headings of its sections, or numbers from 1, in order; null or left out for all')),
  }),
);

const content = {
  title: line.check(z.describe('printed on the title page')),
  by: z.nullable(line).check(z.describe('who wrote it')),
  text: z
    .nullable(z.string().check(z.maxLength(20_000)))
    .check(z.describe('what there is to say before it begins, in small Markdown')),
  chapters: z
    .readonly(z.array(chapter).check(z.maxLength(MOST_CHAPTERS)))
    .check(z.describe('the lessons in order')),
  paper: z.nullable(z.enum(PAPERS)).check(z.describe('size of the paper; null for that of the first lesson')),
  twoSided: z.boolean().check(z.describe('whether chapters begin on right-hand pages')),
  contents: z.boolean().check(z.describe('a table of contents')),
  key: z.boolean().check(z.describe('a key to the notation')),
  index: z.boolean().check(z.describe('an index by voice and rhythm')),
};

/** What a teacher says of a book. */
export const writtenBook = z.readonly(z.strictObject(content));

/** What a teacher says of a book. */
export type WrittenBook = z.output<typeof writtenBook>;

/** Asks to keep a book that was made from a revision. */
export const bookRequest = z.readonly(
  z.strictObject({ ...content, revision: z.int().check(z.describe('counts every change, from 1')) }),
);

/** Asks to keep a book. */
export type BookRequest = z.output<typeof bookRequest>;

/** A book as it is kept. */
export const storedBook = z.readonly(
  z.object({
    id: z.string(),
    ...content,
    revision: z.int().check(z.describe('counts every change, from 1')),
    updatedAt: z.string().check(z.describe('ISO 8601, in UTC')),
  }),
);

/** A book as it is kept. */
export type StoredBook = z.output<typeof storedBook>;
