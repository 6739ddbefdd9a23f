/** The tables of the store. Times are ISO 8601 texts in UTC. */
import type { LessonFiling, StoredStudent, Teacher } from '@shedbook/routes';
import type { LanguageTag } from '@shedbook/words';
import type { ColumnType, Generated } from 'kysely';

/** Kinds of things that are erased for good. */
export type ErasedKind =
  | 'book'
  | 'demonstration'
  | 'hour'
  | 'lesson'
  | 'student'
  | 'practice'
  | 'link'
  | 'take'
  | 'teacher';

/** Teachers: who comes to the desk where others reach it. */
interface TeachersTable {
  readonly id: ColumnType<string, string, never>;
  readonly name: string;
  /** The name as signing in finds it; nobody else has it. */
  readonly finds: string;
  readonly role: Teacher['role'];
}

/** What each teacher knows. */
interface PassphrasesTable {
  readonly teacher_id: string;
  /** Argon2id, encoded. */
  readonly hash: string;
}

/** Letters to teachers who choose a passphrase of their own with one, once. */
interface InvitationsTable {
  /** Of the secret in the letter. */
  readonly token_digest: string;
  readonly teacher_id: string;
  readonly made_at: string;
}

/** What devices are asked just now. */
interface ChallengesTable {
  /** Of what is to be signed. */
  readonly token_digest: string;
  /** Who adds a passkey; null for whoever signs in. */
  readonly teacher_id: string | null;
  readonly made_at: string;
}

/** What each teacher has: devices that sign in by themselves. Source: W3C, Web Authentication. */
interface PasskeysTable {
  /** As the device names it, base64url. */
  readonly id: string;
  readonly teacher_id: string;
  /** COSE, base64url. */
  readonly public_key: string;
  /** Times that the device signed, as it counts them; 0 where it does not. */
  readonly counter: number;
  readonly made_at: string;
  /** When it was last used, or null. */
  readonly used_at: string | null;
}

interface LessonsTable {
  readonly id: ColumnType<string, string, never>;
  /** Who wrote it. */
  readonly teacher_id: Generated<string>;
  readonly revision: number;
  readonly step: number;
  readonly last_step: number;
  readonly created_at: ColumnType<string, string, never>;
  readonly updated_at: string;
  /** When it was thrown away, or null. */
  readonly deleted_at: string | null;
  readonly level: LessonFiling['level'];
  /** JSON: names of shelves. */
  readonly shelves: Generated<string>;
  /** When it was put out of the way, or null. */
  readonly archived_at: string | null;
}

/** What a list shows of a lesson; made anew wherever it is of another revision, or of another kind. */
interface SummariesTable {
  readonly lesson_id: string;
  readonly revision: number;
  /** JSON, with the version of its kind. */
  readonly summary: string;
}

interface StepsTable {
  readonly lesson_id: string;
  readonly step: number;
  readonly text: string;
  /** Of the text; null in a store that was not brought up to date. */
  readonly checksum: string | null;
}

interface StudentsTable {
  readonly id: ColumnType<string, string, never>;
  /** Whose they are. */
  readonly teacher_id: Generated<string>;
  readonly name: string;
  /** The name as a search finds it. */
  readonly finds: string;
  /** JSON: a list of assignments. */
  readonly assignments: string;
  readonly level: StoredStudent['level'];
  readonly set_up: StoredStudent['setUp'];
  readonly revision: number;
  readonly created_at: ColumnType<string, string, never>;
  readonly updated_at: string;
  /** When they were taken off the roster, or null. */
  readonly deleted_at: string | null;
  /** 1 where a guardian decides whether they are recorded, else 0. */
  readonly is_minor: Generated<number>;
  /** Who consented to recordings, as the teacher noted it, or null. */
  readonly consent_by: string | null;
  /** When that was noted, or null. */
  readonly consent_at: string | null;
  /** Whether the coach proposes anything to them. */
  readonly coach: Generated<StoredStudent['coach']['state']>;
  /** Day from which it does again, ISO 8601 without a time, or null. */
  readonly coach_until: string | null;
  /** When they last began to play, in seconds since 1970, or null; the store keeps it as their practice changes. */
  readonly played_at: ColumnType<number | null, never, never>;
}

interface LogRowsTable {
  /** Counts every row that was ever added, of all students. */
  readonly row: Generated<number>;
  readonly student_id: string;
  /** Version of the log that it came from; 0 where none was said. */
  readonly version: number;
  /** The entry that it is of, or null where that cannot be read. */
  readonly entry_id: string | null;
  /** When the entry began, in seconds since 1970, or null. */
  readonly played_at: number | null;
  /** JSON: an entry, `{ "removed": ID }`, or what could not be taken apart. */
  readonly text: string;
  readonly checksum: string | null;
  readonly taken_at: string;
  /** When it was taken out again, or null. */
  readonly removed_at: string | null;
}

interface LinksTable {
  readonly id: string;
  readonly student_id: string;
  /** Of the secret in the link; the secret itself is kept nowhere. */
  readonly token_digest: string;
  readonly language: LanguageTag;
  readonly made_at: string;
  /** When it was last opened, or null. */
  readonly used_at: string | null;
}

interface SessionsTable {
  /** Of the secret in the teacher's cookie. */
  readonly token_digest: string;
  readonly made_at: string;
  /** Who signed in. */
  readonly teacher_id: Generated<string>;
}

interface TakesTable {
  readonly student_id: string;
  /** As the student's page names it. */
  readonly take_id: string;
  readonly sent_at: string;
  /** 1 where the student wants to know what the teacher thinks, else 0. */
  readonly asks: number;
  /** JSON: what the take says of itself. */
  readonly facts: string;
  /** Length of its file. */
  readonly bytes: number;
  /** Of its file. */
  readonly checksum: string;
  /** When the teacher listened to it, or null. */
  readonly heard_at: string | null;
  readonly answer: string | null;
  readonly answered_at: string | null;
  /** JSON: what is pinned to single bars. */
  readonly marks: Generated<string>;
  /** When the teacher chose to keep it, however old it gets, or null. */
  readonly kept_at: string | null;
}

/** What the teacher said of takes. */
interface VoicesTable {
  readonly student_id: string;
  readonly take_id: string;
  readonly spoken_at: string;
  /** The bar of the exercise that it is about, from 1; 0: the whole of it. */
  readonly bar: number;
  /** An MP3 file; SQLite's library gives back a buffer. */
  readonly content: ColumnType<ArrayBuffer, Uint8Array, Uint8Array>;
  readonly checksum: string;
}

/** Exercises as the teacher plays them. */
interface DemonstrationsTable {
  readonly id: string;
  readonly lesson_id: string;
  /** Lasting name of the exercise. */
  readonly exercise: string;
  /** What is played, as one text: one whose exercise is played otherwise now is shown to nobody. */
  readonly plays: string;
  /** JSON: which place is heard when. */
  readonly facts: string;
  readonly kept_at: string;
  /** A FLAC file; SQLite's library gives back a buffer. */
  readonly content: ColumnType<ArrayBuffer, Uint8Array, Uint8Array>;
  readonly checksum: string;
}

/** Dated lessons of students. */
interface HoursTable {
  readonly student_id: string;
  /** ISO 8601, without a time. */
  readonly held_on: string;
  /** JSON: what the teacher wrote of it, and what was set in it. */
  readonly content: string;
  readonly checksum: string;
  readonly revision: number;
  readonly updated_at: string;
}

interface BooksTable {
  readonly id: ColumnType<string, string, never>;
  /** Who put it together. */
  readonly teacher_id: Generated<string>;
  /** JSON: what the teacher says of it. */
  readonly content: string;
  readonly checksum: string;
  readonly revision: number;
  readonly created_at: ColumnType<string, string, never>;
  readonly updated_at: string;
}

/** Who did what; nothing of what was said, played or written. */
interface JournalTable {
  readonly id: string;
  readonly at: string;
  readonly who: string;
  readonly did: string;
  /** Whom it is about, also where they were erased, or null. */
  readonly student_id: string | null;
  /** How many, where several, or null. */
  readonly n: number | null;
  /** The teacher who did it, or whose student did, or null. */
  readonly teacher_id: string | null;
}

/** What was erased, taken back or forgotten: no name and no content, only what a backup would bring back otherwise. */
interface ErasedTable {
  readonly kind: ErasedKind;
  /** An id, or several as JSON where it takes them to tell which. */
  readonly id: string;
  readonly erased_at: string;
}

interface NotesTable {
  readonly key: string;
  readonly value: string;
}

/** Every table by name. */
export interface Tables {
  readonly lessons: LessonsTable;
  readonly steps: StepsTable;
  readonly summaries: SummariesTable;
  /** Small facts about the store itself, such as which demo lessons it has been given. */
  readonly notes: NotesTable;
  readonly students: StudentsTable;
  readonly log_rows: LogRowsTable;
  /** Private links of students. */
  readonly links: LinksTable;
  readonly teachers: TeachersTable;
  readonly passphrases: PassphrasesTable;
  readonly invitations: InvitationsTable;
  readonly passkeys: PasskeysTable;
  readonly challenges: ChallengesTable;
  /** Where a teacher has signed in. */
  readonly sessions: SessionsTable;
  readonly erased: ErasedTable;
  /** Takes that students sent; their files lie in a folder beside the store. */
  readonly takes: TakesTable;
  readonly voices: VoicesTable;
  readonly demonstrations: DemonstrationsTable;
  readonly books: BooksTable;
  readonly hours: HoursTable;
  readonly journal: JournalTable;
}
