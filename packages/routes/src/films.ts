/** Films of a lesson, as desk and server speak of them. */
import { LESSON_TEMPI } from '@shedbook/core';
import { LANGUAGE_TAGS } from '@shedbook/words';
import * as z from 'zod/mini';

/** Files that a film comes with. */
export const FILM_PARTS = ['film', 'captions-en', 'captions-de', 'chapters', 'cover'] as const;

/** A file that a film comes with. */
export type FilmPart = (typeof FILM_PARTS)[number];

/** Bytes of a performance that is sent, at most: some minutes as telephones film them. */
export const PERFORMANCE_BYTES = 4 * 1024 ** 3;
/** Bytes of one part of it, at most: it is sent part by part. */
export const PART_BYTES = 4 * 1024 ** 2;

/** Where the picture of a performance stands. */
const PICTURES = ['beside', 'above', 'corner', 'none'] as const;
/** What is heard over a performance. */
const SOUNDS = ['teacher', 'model', 'both'] as const;

/** Performances that a film follows, and how it shows them. */
const overWish = z.readonly(
  z.strictObject({
    performances: z
      .readonly(z.array(z.string().check(z.maxLength(200))).check(z.minLength(1), z.maxLength(100)))
      .check(z.describe('names of performances; of several of one exercise that with the fewest faults')),
    picture: z.nullable(z.enum(PICTURES)).check(z.describe('null for what suits the shape')),
    heard: z.enum(SOUNDS),
    speeds: z
      .readonly(
        z.array(z.number().check(z.minimum(0.25), z.maximum(1))).check(z.minLength(1), z.maxLength(4)),
      )
      .check(z.describe('ratios: 0.5 is half as fast as it was played')),
  }),
);

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
    framesPerSecond: z._default(z.literal([30, 60]), 30),
    over: z
      ._default(z.nullable(overWish), null)
      .check(z.describe('performances that page and ball follow; null for none')),
    countAloud: z
      ._default(z.boolean(), false)
      .check(
        z.describe(
          'whether it is counted aloud, over a click on every beat, where no performance is followed',
        ),
      ),
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

/** What of a performance is to be heard. */
export const performanceWish = z.readonly(
  z.strictObject({
    performance: z.string().check(z.maxLength(200), z.describe('name of the performance')),
    exercise: z.number().check(z.int(), z.minimum(1)),
    form: z.nullable(z.string().check(z.maxLength(200))).check(z.describe('null for the usual one')),
  }),
);

/** What of a performance is to be heard. */
export type PerformanceWish = z.output<typeof performanceWish>;

/** A film that was sent as performances are. */
export const sentFilm = z.readonly(
  z.strictObject({
    performance: z.string().check(z.maxLength(200), z.describe('name under which it was sent')),
    bytes: z.number().check(z.int(), z.minimum(1), z.describe('how large it is, as a whole')),
    exercise: z.number().check(z.int(), z.minimum(1)),
    ending: z.enum(['.mp4', '.webm']),
  }),
);

/** A film that was sent as performances are. */
export type SentFilm = z.output<typeof sentFilm>;

/** What was heard of a performance. */
export const heardPerformance = z.readonly(
  z.object({
    exercise: z.number(),
    seconds: z.number().check(z.describe('how long it is, without silence before and after')),
    faults: z.number().check(z.describe('how many faults a teacher would count')),
    hasPicture: z.boolean(),
  }),
);

/** What was heard of a performance. */
export type HeardPerformance = z.output<typeof heardPerformance>;

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
