/** Films of a lesson, as desk and server speak of them. */
import { LESSON_TEMPI } from '@shedbook/core';
import { LANGUAGE_TAGS } from '@shedbook/words';
import * as z from 'zod/mini';

/** Files that a film comes with. */
export const FILM_PARTS = ['film', 'captions-en', 'captions-de', 'chapters', 'cover'] as const;

/** A file that a film comes with. */
export type FilmPart = (typeof FILM_PARTS)[number];

/** What a film is asked to be. */
export const filmWish = z.readonly(
  z.strictObject({
    exercises: z
      .readonly(z.array(z.number().check(z.int(), z.minimum(1))).check(z.minLength(1), z.maxLength(1000)))
      .check(z.describe('numbers of the exercises')),
    form: z.nullable(z.string().check(z.maxLength(200))).check(z.describe('null for the usual one')),
    bpm: z
      .nullable(z.number().check(z.minimum(LESSON_TEMPI.least), z.maximum(LESSON_TEMPI.most)))
      .check(z.describe('quarter notes a minute; null for the start tempo')),
    shape: z.enum(['landscape', 'portrait']),
    scheme: z.enum(['light', 'dark']),
    buildUp: z
      .boolean()
      .check(z.describe('whether the groove is built up limb by limb before the exercises')),
    language: z.enum(LANGUAGE_TAGS).check(z.describe('language that is shown; captions come in all')),
  }),
);

/** What a film is asked to be. */
export type FilmWish = z.output<typeof filmWish>;

/** What a film will be. */
export const filmPlan = z.readonly(
  z.object({
    seconds: z.number(),
    widthPx: z.number(),
    heightPx: z.number(),
    bytes: z.number().check(z.describe('about how large the file will be, within a factor of two')),
  }),
);

/** What a film will be. */
export type FilmPlan = z.output<typeof filmPlan>;

/** How far a film is. */
export const filmState = z.readonly(
  z.object({
    id: z.string(),
    at: z.enum(['waiting', 'sound', 'picture', 'made', 'failed']),
    share: z.number().check(z.describe('how much of its stage is done, 0 to 1')),
    leftSeconds: z.nullable(z.number()).check(z.describe('null where it is not known yet')),
    files: z.readonly(
      z.array(z.readonly(z.object({ part: z.enum(FILM_PARTS), name: z.string(), bytes: z.number() }))),
    ),
  }),
);

/** How far a film is. */
export type FilmState = z.output<typeof filmState>;
