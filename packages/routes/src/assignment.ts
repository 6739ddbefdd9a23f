/** What a teacher set a student to practise, as it is kept and sent. */
import { LESSON_TEMPI } from '@shedbook/core';
import * as z from 'zod/mini';

/** What a teacher set a student to practise. The exercise is named by what it plays, so that it outlives its number. */
export const storedAssignment = z.readonly(
  z.strictObject({
    lesson: z.string().check(z.maxLength(200), z.describe('id of the lesson')),
    exercise: z.string().check(z.maxLength(10_000), z.describe('what the exercise plays')),
    pinned: z.boolean().check(z.describe('stands in every plan until it is taken out')),
    note: z.nullable(z.string().check(z.maxLength(2_000))),
    toBpm: z
      ._default(
        z.nullable(z.number().check(z.minimum(LESSON_TEMPI.least), z.maximum(LESSON_TEMPI.most))),
        null,
      )
      .check(z.describe("tempo that it is set for, in quarter notes a minute; null for the lesson's goal")),
    by: z._default(z.nullable(z.iso.date()), null).check(z.describe('day for which it is set')),
  }),
);

/** What a teacher set a student to practise. */
export type StoredAssignment = z.output<typeof storedAssignment>;

/** What was set without a tempo and a day. */
const NO_AIM = { toBpm: null, by: null } as const;

/** Assignments out of the text that they are kept as, also from before they had a tempo and a day. */
export function readAssignments(text: string): readonly StoredAssignment[] {
  const kept = JSON.parse(text) as readonly StoredAssignment[];
  return kept.map((each) => ({ ...NO_AIM, ...each }));
}
