/**
 * Takes that students send: what a take says of itself, and how it is kept.
 *
 * Conventions: the file of a take is the zip that the practice page writes; its `take.json` holds the facts.
 */
import * as z from 'zod/mini';

const moment = z.string().check(z.describe('ISO 8601, in UTC'));

/** Bytes that the file of a take has at most: some ten minutes of sound. */
export const TAKE_BYTES = 64 * 1024 * 1024;

/** What a take says of itself, as far as a list of takes shows it. */
export const takeFacts = z.readonly(
  z.object({
    id: z.string().check(z.minLength(1), z.maxLength(200)),
    startedAt: z.string().check(z.maxLength(40), z.describe('when it began, with its offset from UTC')),
    lesson: z.string().check(z.maxLength(200), z.describe('lasting name of the lesson')),
    lessonTitle: z.string().check(z.maxLength(10_000)),
    exercise: z
      .nullable(z.string().check(z.maxLength(10_000)))
      .check(z.describe('what the exercise plays; null for the groove alone')),
    number: z.nullable(z.int()).check(z.describe('number of the exercise when it was played')),
    form: z.string().check(z.maxLength(10_000)),
    durationSeconds: z.number(),
    verdicts: z.readonly(z.array(z.looseObject({ verdict: z.string() })).check(z.maxLength(10_000))),
  }),
);

/** What a take says of itself. */
export type TakeFacts = z.output<typeof takeFacts>;

/** Bytes that a voice note has at most: some three minutes. */
export const VOICE_BYTES = 4 * 1024 * 1024;

/** Most bars that an exercise has. */
const MOST_BARS = 1_000;

/** What a teacher says of one bar. */
export const barMark = z.readonly(
  z.strictObject({
    bar: z.int().check(z.minimum(1), z.maximum(MOST_BARS), z.describe('bar of the exercise, from 1')),
    text: z.string().check(z.trim(), z.minLength(1), z.maxLength(500)),
  }),
);

/** What a teacher says of one bar. */
export type BarMark = z.output<typeof barMark>;

/** The bar that a spoken note is about. */
export const spokenAt = z.object({
  bar: z
    .optional(z.coerce.number().check(z.int(), z.minimum(1), z.maximum(MOST_BARS)))
    .check(z.describe('bar of the exercise that the note is about, from 1; the whole where left out')),
});

/** A note that a teacher spoke. */
export const spokenNote = z.readonly(
  z.object({
    bar: z
      .nullable(z.int())
      .check(z.describe('bar of the exercise that it is about, from 1; null: the whole of it')),
    spokenAt: moment,
  }),
);

/** A note that a teacher spoke. */
export type SpokenNote = z.output<typeof spokenNote>;

/** What a teacher makes of a take. */
const opinion = {
  isHeard: z.boolean().check(z.describe('whether the teacher has listened to it')),
  answer: z
    .nullable(z.string().check(z.minLength(1), z.maxLength(4_000)))
    .check(z.describe('a line for the student; null where there is none')),
  marks: z
    ._default(z.readonly(z.array(barMark).check(z.maxLength(30))), [])
    .check(z.describe('what is pinned to single bars')),
};

/** What a teacher makes of a take. */
export const takeOpinion = z.readonly(z.strictObject(opinion));

/** What a teacher makes of a take. */
export type TakeOpinion = z.output<typeof takeOpinion>;

/** A take that a student sent, as it is kept. */
export const sentTake = z.readonly(
  z.object({
    student: z.string().check(z.describe('id of the student')),
    facts: takeFacts,
    asks: z.boolean().check(z.describe('whether the student wants to know what the teacher thinks')),
    sentAt: moment,
    ...opinion,
    notes: z
      ._default(z.readonly(z.array(spokenNote)), [])
      .check(z.describe('spoken notes: one of the whole at most, first, and one of each bar')),
    answeredAt: z.nullable(moment).check(z.describe('when the answer was given')),
    isKept: z
      ._default(z.boolean(), false)
      .check(z.describe('whether it is kept by hand, however old it gets')),
    goesAt: z
      ._default(z.nullable(moment), null)
      .check(z.describe('when it is erased for its age; null where it stays')),
  }),
);

/** A take that a student sent. */
export type SentTake = z.output<typeof sentTake>;
