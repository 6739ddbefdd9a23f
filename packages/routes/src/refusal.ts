/**
 * Why the server says no: a code and values, from which the desk makes a sentence in its reader's language.
 */
import * as z from 'zod/mini';
import { storedBook } from './books.ts';
import { storedHour } from './hours.ts';
import { storedLesson, storedStudent } from './stored.ts';

const nothing = z.readonly(z.object({}));

/** A place in a request that was not as it should be. */
const wrongPlace = z.readonly(
  z.object({
    path: z.string().check(z.describe('where in the request, such as `body.revision`; empty for the whole')),
    problem: z.string().check(z.describe('what kind of problem, as the schema library names it')),
  }),
);

/** A fact with its values, as the rooms state it. */
const fact = z.readonly(z.looseObject({ fact: z.string() }));

/** Every refusal: its HTTP status (RFC 9110, section 15), the values that come with it, and what it means. */
export const REFUSALS = {
  'no-such-lesson': { status: 404, values: nothing, meaning: 'no lesson has this id, or it was removed' },
  'no-such-step': { status: 404, values: nothing, meaning: 'the history does not reach that far' },
  'no-such-student': {
    status: 404,
    values: nothing,
    meaning: 'no student has this id, or they were removed',
  },
  'no-such-link': {
    status: 404,
    values: nothing,
    meaning: 'no student has this private link, or it was taken back',
  },
  'no-such-take': {
    status: 404,
    values: nothing,
    meaning: 'the student sent no such take, or took it back',
  },
  'no-such-medium': { status: 404, values: nothing, meaning: 'no file of the teacher has this name' },
  'medium-refused': {
    status: 422,
    values: z.readonly(
      z.object({
        fault: z
          .enum(['missing', 'too-large', 'other-content', 'scripts'])
          .check(z.describe('what is wrong with it')),
      }),
    ),
    meaning: 'the file is no picture, sound or video that can be shown, or it is too large',
  },
  'no-such-film': {
    status: 404,
    values: nothing,
    meaning: 'there is no such film: it was left off, or nobody asked after it for a while',
  },
  'no-ffmpeg': {
    status: 501,
    values: nothing,
    meaning: 'there is no FFmpeg beside the server, or none that encodes films',
  },
  'no-such-performance': {
    status: 404,
    values: nothing,
    meaning: 'there is no such performance, or nobody asked after it for a while; or it is too large',
  },
  'no-such-demonstration': {
    status: 404,
    values: nothing,
    meaning: 'no demonstration that is kept has this id',
  },
  'performance-unreadable': {
    status: 422,
    values: nothing,
    meaning: 'the performance has no sound that FFmpeg can read',
  },
  'performance-not-followed': {
    status: 422,
    values: nothing,
    meaning: 'the exercise cannot be followed in the performance',
  },
  'performance-of-another': {
    status: 422,
    values: z.readonly(z.object({ exercise: z.number().check(z.describe('the one that was heard')) })),
    meaning: 'another exercise of the lesson is played in the performance',
  },
  'not-a-take': {
    status: 422,
    values: nothing,
    meaning: 'the file is none that the practice page writes of a take',
  },
  'not-a-voice-note': { status: 422, values: nothing, meaning: 'the file is no MP3 file' },
  'no-consent': {
    status: 403,
    values: nothing,
    meaning: 'the student is a minor and no guardian has consented to recordings',
  },
  'no-room': {
    status: 507,
    values: z.readonly(z.object({ mostBytes: z.number() })),
    meaning: 'what one student sent fills all the room that there is for it',
  },
  'no-such-teacher': { status: 404, values: nothing, meaning: 'no teacher has this id' },
  'no-such-invitation': {
    status: 404,
    values: nothing,
    meaning: 'no letter to a teacher has this secret, or it was taken up, or is too old',
  },
  'no-passkeys-here': {
    status: 409,
    values: nothing,
    meaning:
      'the server was told no address by which others reach it encrypted, for which a passkey could hold',
  },
  'passkey-refused': {
    status: 403,
    values: nothing,
    meaning: 'the passkey is unknown, or its answer wrong or late',
  },
  'no-such-passkey': { status: 404, values: nothing, meaning: 'whoever asks has no such passkey' },
  'name-taken': { status: 409, values: nothing, meaning: 'another teacher has this name' },
  'first-stays': { status: 409, values: nothing, meaning: 'the first teacher stays, as a head' },
  'no-passphrase': {
    status: 409,
    values: nothing,
    meaning: 'there is no passphrase yet, without which nobody is let in beside the first teacher',
  },
  'school-backup': {
    status: 403,
    values: nothing,
    meaning: 'where there are several teachers, all of it is backed up on the computer alone',
  },
  'head-only': { status: 403, values: nothing, meaning: 'a head does this, and no other teacher' },
  'not-yours': {
    status: 403,
    values: nothing,
    meaning: 'another teacher made it, who changes it, or a head',
  },
  'sign-in-first': { status: 401, values: nothing, meaning: 'nobody has signed in, or too long ago' },
  'wrong-passphrase': { status: 403, values: nothing, meaning: 'the passphrase is another' },
  'too-often': {
    status: 429,
    values: z.readonly(
      z.object({ waitSeconds: z.number().check(z.describe('how long to wait before the next attempt')) }),
    ),
    meaning: 'it was tried too often',
  },
  'lesson-changed': {
    status: 409,
    values: z.readonly(z.object({ kept: storedLesson })),
    meaning: 'the lesson was changed since the revision that was named; nothing was written',
  },
  'student-changed': {
    status: 409,
    values: z.readonly(z.object({ kept: storedStudent })),
    meaning: 'the student was changed since the revision that was named; nothing was written',
  },
  'no-such-book': { status: 404, values: nothing, meaning: 'no book has this id, or it was erased' },
  'book-changed': {
    status: 409,
    values: z.readonly(z.object({ kept: storedBook })),
    meaning: 'the book was changed since the revision that was named; nothing was written',
  },
  'book-unfinished': {
    status: 422,
    values: z.readonly(z.object({ lessons: z.readonly(z.array(z.string())) })),
    meaning: 'the book has no lessons, or these are gone, lack a section or have errors; nothing was made',
  },
  'no-such-hour': { status: 404, values: nothing, meaning: 'the student has no hour on this day' },
  'hour-changed': {
    status: 409,
    values: z.readonly(z.object({ kept: z.nullable(storedHour) })),
    meaning: 'the hour was changed or erased since the revision that was named; nothing was written',
  },
  'unreadable-file': {
    status: 422,
    values: z.readonly(
      z.object({ why: fact.check(z.describe('what was found in the file, and what would be right')) }),
    ),
    meaning: 'the file is neither MusicXML nor MIDI, is broken, or has no drum notes',
  },
  'lesson-has-errors': { status: 422, values: nothing, meaning: 'the text of the lesson has errors' },
  'bad-request': {
    status: 400,
    values: z.readonly(z.object({ places: z.readonly(z.array(wrongPlace)) })),
    meaning: 'the request is not what the route takes, or there is no such route',
  },
  'too-large': {
    status: 413,
    values: z.readonly(z.object({ mostBytes: z.number() })),
    meaning: 'the request is larger than the server takes',
  },
  'foreign-origin': {
    status: 403,
    values: nothing,
    meaning: 'the request comes from a page of another site',
  },
  damaged: {
    status: 409,
    values: nothing,
    meaning: 'what is kept there is damaged on the disk; the rest can be read',
  },
  'disk-full': {
    status: 507,
    values: nothing,
    meaning: 'the disk of the server is full; nothing was written and nothing is lost',
  },
  'too-much': {
    status: 422,
    values: nothing,
    meaning: 'making or reading it takes more time or memory than is given to one request',
  },
  'store-away': {
    status: 503,
    values: nothing,
    meaning: 'the database that lessons and students are kept in does not answer now; nothing was written',
  },
  internal: { status: 500, values: nothing, meaning: 'a fault of the server' },
} as const;

/** Code of a refusal. */
export type RefusalCode = keyof typeof REFUSALS;

/** The values that come with a code. */
export type RefusalValues<Code extends RefusalCode> = z.output<(typeof REFUSALS)[Code]['values']>;

/** A refusal as it is sent; of some codes only where they are named. */
export type Refusal<Code extends RefusalCode = RefusalCode> = {
  readonly [Each in Code]: { readonly code: Each; readonly values: RefusalValues<Each> };
}[Code];

/** Refusals that any route may answer with. */
export const COMMON_REFUSALS = [
  'bad-request',
  'too-large',
  'foreign-origin',
  'sign-in-first',
  'head-only',
  'not-yours',
  'damaged',
  'disk-full',
  'too-much',
  'store-away',
  'internal',
] as const;

function isCode(code: unknown): code is RefusalCode {
  return typeof code === 'string' && Object.hasOwn(REFUSALS, code);
}

/** A refusal. */
export function refusal<Code extends RefusalCode>(code: Code, values: RefusalValues<Code>): Refusal<Code> {
  return { code, values } as unknown as Refusal<Code>;
}

/** A refusal out of what was received; null when it is none. */
export function readRefusal(received: unknown): Refusal | null {
  const { code, values } = (received ?? {}) as { readonly code?: unknown; readonly values?: unknown };
  if (!isCode(code)) return null;
  const read = REFUSALS[code].values.safeParse(values);
  return read.success ? ({ code, values: read.data } as Refusal) : null;
}
