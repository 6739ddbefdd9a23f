/** How long recordings are kept, and the journal of what was done. */
import * as z from 'zod/mini';

/** Weeks that takes may be kept. */
export const KEEPING_WEEKS = [4, 8, 13, 26, 52] as const;

const takeWeeks = z
  .nullable(z.int().check(z.minimum(1), z.maximum(520)))
  .check(z.describe('weeks after which a take is erased that nobody keeps by hand; null for never'));

/** How long takes are kept. */
export const keeping = z.readonly(z.strictObject({ takeWeeks }));

/** How long takes are kept. */
export type Keeping = z.output<typeof keeping>;

/** How long takes are kept, and what follows. */
export const keptTakes = z.readonly(
  z.object({
    takeWeeks,
    due: z.int().check(z.describe('takes that are older than that and are erased within the hour')),
  }),
);

/** How long takes are kept, and what follows. */
export type KeptTakes = z.output<typeof keptTakes>;

/** Asks to keep a take by hand, however old it is, or no longer. */
export const keepTakeRequest = z.readonly(z.strictObject({ isKept: z.boolean() }));

/** What is written into the journal. */
export const DEEDS = [
  'signed-in',
  'sign-in-refused',
  'signed-out',
  'passphrase-set',
  'link-made',
  'link-revoked',
  'consent-noted',
  'practice-sent',
  'exercise-passed',
  'take-sent',
  'take-taken-back',
  'take-heard',
  'note-spoken',
  'note-taken-back',
  'exercises-set',
  'take-kept',
  'take-not-kept',
  'takes-aged',
  'keeping-set',
  'practice-exported',
  'everything-exported',
  'backed-up',
  'backup-restored',
  'progress-printed',
  'demonstration-erased',
  'lesson-erased',
  'hour-erased',
  'practice-erased',
  'student-removed',
  'student-restored',
  'student-erased',
  'student-handed-over',
  'teacher-added',
  'teacher-invited',
  'teacher-joined',
  'teacher-changed',
  'teacher-removed',
  'passkey-added',
  'passkey-removed',
] as const;

/** What is written into the journal. */
export type Deed = (typeof DEEDS)[number];

/** Who does what is written into the journal: `desk` is whoever has signed in, `computer` whoever works on it. */
export const DOERS = ['desk', 'student', 'somebody', 'computer', 'server'] as const;

/** Who does what is written into the journal. */
export type Doer = (typeof DOERS)[number];

/** Entries of the journal that are sent at once. */
export const JOURNAL_PAGE = 50;

/** One entry of the journal: nothing of what was said, played or written is in it. */
export const journalEntry = z.readonly(
  z.object({
    at: z.string().check(z.describe('ISO 8601, in UTC')),
    who: z.enum(DOERS),
    did: z.enum(DEEDS),
    student: z.nullable(z.string()).check(z.describe('id of the student whom it is about')),
    name: z.nullable(z.string()).check(z.describe('what they are called; null where they were erased')),
    teacher: z
      .nullable(z.string())
      .check(
        z.describe('what the teacher is called who did it; null where it was none, or one without a name'),
      ),
    n: z.nullable(z.int()).check(z.describe('how many, where several')),
  }),
);

/** One entry of the journal. */
export type JournalEntry = z.output<typeof journalEntry>;

/** A part of the journal, the last first. */
export const journalPage = z.readonly(
  z.object({
    entries: z.readonly(z.array(journalEntry)),
    next: z
      .nullable(z.string())
      .check(z.describe('place after which there is more; null where there is none')),
  }),
);

/** A part of the journal. */
export type JournalPage = z.output<typeof journalPage>;
