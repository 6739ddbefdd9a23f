/**
 * Takes that students sent: facts and the teacher's answer in the store, the file beside it.
 *
 * Conventions: a file is on the disk before its row is, and a row goes before its file; what a crash leaves between the
 * two is a file without a row, which is deleted later. A recording in place of another is another file.
 */
import {
  type BarMark,
  FIRST_TEACHER,
  type Inbox,
  type Keeping,
  type KeptTakes,
  type SentTake,
  type SpokenNote,
  type TakeFacts,
  type TakeOpinion,
} from '@shedbook/routes';
import { type Kysely, type Selectable, sql } from 'kysely';
import { checksumOf } from './checksum.ts';
import { DamagedError } from './damaged.ts';
import { alone, inTransaction } from './engine.ts';
import { forgiveErased, noteErased } from './erased.ts';
import type { Tables } from './tables.ts';
import type { TakeFile, TakeFiles, TakeName } from './take-files.ts';

/** Bytes that takes of one student have at most. */
export const STUDENT_BYTES = 4 * 1024 ** 3;

/** Takes that are shown of those that wait: more than a teacher hears in a day. */
const MOST_SHOWN = 100;

/** A take as it comes. */
export interface ComingTake {
  readonly student: string;
  readonly facts: TakeFacts;
  readonly asks: boolean;
  readonly content: Uint8Array;
}

/** The store of takes. */
export interface TakeStore {
  /** All takes of a student, the newest first. */
  of(student: string): Promise<readonly SentTake[]>;
  /** Takes that nobody has listened to, of everybody on a teacher's roster, the first's where it is left out; as many as are shown, and how many there are. */
  unheard(teacher?: string): Promise<Pick<Inbox, 'takes' | 'takesOf'>>;
  /** Keeps a take, in place of the same one; null where the student has no room left. */
  keep(take: ComingTake): Promise<SentTake | null>;
  /** The file of a take; null where there is no such take. @throws DamagedError where it is not as it was written */
  read(name: TakeName): Promise<Uint8Array | null>;
  /** Keeps what the teacher makes of a take; null where there is no such take. */
  answer(name: TakeName, opinion: TakeOpinion): Promise<SentTake | null>;
  /** What the teacher said of a take, or of one bar of it, an MP3 file; null where they said nothing. @throws DamagedError where it is not as it was kept */
  voice(name: TakeName, bar: number | null): Promise<Uint8Array | null>;
  /** Keeps what the teacher said of a take, or of one bar of it, in place of what they said of that before; null where there is no such take. */
  say(name: TakeName, content: Uint8Array, bar: number | null): Promise<SentTake | null>;
  /** Forgets what the teacher said of a take, or of one bar of it. @returns whether there was anything */
  unsay(name: TakeName, bar: number | null): Promise<boolean>;
  /** Forgets a take and its file. @returns whether there was one */
  remove(name: TakeName): Promise<boolean>;
  /** Keeps a take however old it gets, or no longer; null where there is no such take. */
  keepByHand(name: TakeName, isKept: boolean): Promise<SentTake | null>;
  /** How long takes are kept, and how many of a teacher's students are due, the first's where it is left out. */
  keeping(teacher?: string): Promise<KeptTakes>;
  /** Sets how long takes are kept, of everybody. */
  setKeeping(keeping: Keeping, teacher?: string): Promise<KeptTakes>;
  /** Erases takes that are too old and not kept by hand, with their files. @returns how many of whom */
  age(): Promise<ReadonlyMap<string, number>>;
  /** Does what forgets students or takes, and deletes the files of those that are kept no more. */
  withFiles<Result>(forget: () => Promise<Result>): Promise<Result>;
  /** Deletes files that a crash left without a take, and gives those of an older program the names of this one. */
  sweep(): Promise<void>;
}

/** A row, and what the teacher said of the take, see {@link notesOf}; null where nothing was. */
type Row = Selectable<Tables['takes']> & { readonly notes: string | null };

/** The spoken notes of a take: bars and times. */
const NOTES = sql<string | null>`string_agg(bar || ' ' || spoken_at, ',')`;

/** How the store writes what a note is about. */
const ALL_OF_IT = 0;

const WEEK_MS = 7 * 24 * 3_600_000;

/** What was spoken about a take, what is about all of it first, then bar by bar. */
function notesOf({ notes }: Row): readonly SpokenNote[] {
  const all = (notes ?? '').split(',').flatMap((each): readonly SpokenNote[] => {
    const [bar, spokenAt] = each.split(' ');
    return spokenAt === undefined ? [] : [{ bar: Number(bar) || null, spokenAt }];
  });
  return all.toSorted((one, other) => (one.bar ?? ALL_OF_IT) - (other.bar ?? ALL_OF_IT));
}

/** A take as it is sent. @param weeks after which one is erased; null for never */
function takeOf(row: Row, weeks: number | null): SentTake {
  const isKept = row.kept_at !== null;
  return {
    student: row.student_id,
    facts: JSON.parse(row.facts) as TakeFacts,
    asks: row.asks === 1,
    sentAt: row.sent_at,
    isHeard: row.heard_at !== null,
    answer: row.answer,
    marks: JSON.parse(row.marks) as readonly BarMark[],
    notes: notesOf(row),
    answeredAt: row.answered_at,
    isKept,
    goesAt:
      weeks === null || isKept ? null : new Date(Date.parse(row.sent_at) + weeks * WEEK_MS).toISOString(),
  };
}

function rowOf({ student, facts, asks, content }: ComingTake, now: string) {
  return {
    ...{ student_id: student, take_id: facts.id, sent_at: now, asks: asks ? 1 : 0 },
    ...{ facts: JSON.stringify(facts), bytes: content.length, checksum: checksumOf(content) },
    heard_at: null,
  };
}

function isThe(name: TakeName) {
  return { student_id: name.student, take_id: name.take };
}

/** What becomes of a row when the teacher has said something. */
function answered(row: Row, { isHeard, answer, marks }: TakeOpinion, now: string) {
  const pinned = JSON.stringify(marks);
  const isSame = answer === row.answer && pinned === row.marks;
  const isNothing = answer === null && marks.length === 0 && row.notes === null;
  return {
    heard_at: isHeard ? (row.heard_at ?? now) : null,
    answer,
    marks: pinned,
    answered_at: isNothing ? null : isSame ? row.answered_at : now,
  };
}

/** Does one thing after the other, also where several servers share the store. */
function inTurn(database: Kysely<Tables>) {
  let last: Promise<unknown> = Promise.resolve();
  return <Result>(work: () => Promise<Result>): Promise<Result> => {
    const take = () => alone(database, 'takes', work);
    const next = last.then(take, take);
    last = next.catch(() => undefined);
    return next;
  };
}

/** Under what how long takes are kept stands among the notes. */
const KEEPING = 'take-weeks';

/**
 * A store of takes over an open database.
 * @param clock gives the time of a change
 * @param ageClock gives the time by which takes grow old
 */
export function createTakeStore(
  database: Kysely<Tables>,
  files: TakeFiles,
  clock: () => Date,
  ageClock: () => Date = clock,
): TakeStore {
  const now = () => clock().toISOString();
  const turn = inTurn(database);
  const rows = () =>
    database
      .selectFrom('takes')
      .selectAll('takes')
      .select(({ selectFrom }) =>
        selectFrom('voices')
          .whereRef('voices.student_id', '=', 'takes.student_id')
          .whereRef('voices.take_id', '=', 'takes.take_id')
          .select(NOTES.as('notes'))
          .as('notes'),
      );
  const find = ({ student, take }: TakeName) =>
    rows().where('takes.student_id', '=', student).where('takes.take_id', '=', take).executeTakeFirst();
  const room = async ({ student, facts, content }: ComingTake) => {
    const { used } = await database
      .selectFrom('takes')
      .select(sql<number>`coalesce(sum(bytes), 0)`.as('used'))
      .where('student_id', '=', student)
      .where('take_id', '!=', facts.id)
      .executeTakeFirstOrThrow();
    return STUDENT_BYTES - used - content.length;
  };
  const weeksKept = async (): Promise<number | null> => {
    const note = database.selectFrom('notes').select('value').where('key', '=', KEEPING);
    const weeks = Number((await note.executeTakeFirst())?.value ?? Number.NaN);
    return Number.isFinite(weeks) ? weeks : null;
  };
  const sent = async (row: Row | undefined) => (row ? takeOf(row, await weeksKept()) : null);
  /** Erases a take with its sound, and notes that. */
  const erase = async (file: TakeFile) => {
    await inTransaction(database, async (inside) => {
      await inside
        .deleteFrom('takes')
        .where((of) => of.and(isThe(file)))
        .execute();
      await noteErased(inside, 'take', [file], now());
    });
    await files.remove(file);
  };
  /** Takes that are too old. */
  const aged = async (weeks: number | null) => {
    if (weeks === null) return [];
    const before = new Date(ageClock().getTime() - weeks * WEEK_MS).toISOString();
    const old = database.selectFrom('takes').select(['student_id as student', 'take_id as take', 'checksum']);
    return old.where('kept_at', 'is', null).where('sent_at', '<', before).execute();
  };
  const keeping = async (teacher = FIRST_TEACHER): Promise<KeptTakes> => {
    const takeWeeks = await weeksKept();
    const own = database.selectFrom('students').select('id').where('teacher_id', '=', teacher);
    const roster = new Set((await own.execute()).map(({ id }) => id));
    const due = (await aged(takeWeeks)).filter(({ student }) => roster.has(student)).length;
    return { takeWeeks, due };
  };
  const names = (): Promise<readonly TakeFile[]> =>
    database.selectFrom('takes').select(['student_id as student', 'take_id as take', 'checksum']).execute();
  const withFiles = async <Result>(forget: () => Promise<Result>): Promise<Result> => {
    const before = await names();
    const result = await forget();
    const after = new Set((await names()).map((name) => JSON.stringify(name)));
    for (const name of before) if (!after.has(JSON.stringify(name))) await files.remove(name);
    return result;
  };
  return {
    of: async (student) => {
      const weeks = await weeksKept();
      const all = rows().where('takes.student_id', '=', student).orderBy('sent_at', 'desc');
      return (await all.execute()).map((row) => takeOf(row, weeks));
    },
    unheard: async (teacher = FIRST_TEACHER) => {
      const found = await rows()
        .innerJoin('students', 'students.id', 'takes.student_id')
        .select((of) => ['students.name', of.fn.countAll<number>().over().as('n')])
        .where('students.teacher_id', '=', teacher)
        .where('students.deleted_at', 'is', null)
        .where('heard_at', 'is', null)
        .orderBy('asks', 'desc')
        .orderBy('sent_at')
        .limit(MOST_SHOWN)
        .execute();
      const weeks = await weeksKept();
      const takes = found.map(({ name, ...row }) => ({ name, take: takeOf(row, weeks) }));
      return { takes, takesOf: found[0]?.n ?? 0 };
    },
    keep: (take) =>
      turn(async () => {
        const name = { student: take.student, take: take.facts.id };
        const row = rowOf(take, now());
        const there = await find(name);
        if (there?.checksum === row.checksum && there.asks === row.asks) return sent(there);
        if ((await room(take)) < 0) return null;
        await files.write({ ...name, checksum: row.checksum }, take.content);
        // Another recording of the same name waits to be heard; what was said before stays.
        await inTransaction(database, async (inside) => {
          await inside
            .insertInto('takes')
            .values(row)
            .onConflict((on) => on.columns(['student_id', 'take_id']).doUpdateSet(row))
            .execute();
          await forgiveErased(inside, 'take', name);
        });
        if (there && there.checksum !== row.checksum)
          await files.remove({ ...name, checksum: there.checksum });
        return sent(await find(name));
      }),
    read: async (name) => {
      const row = await find(name);
      if (!row) return null;
      const content = await files.read({ ...name, checksum: row.checksum });
      if (!content || checksumOf(content) !== row.checksum) throw new DamagedError();
      return content;
    },
    answer: (name, opinion) =>
      turn(async () => {
        const row = await find(name);
        if (!row) return null;
        const next = answered(row, opinion, now());
        await database
          .updateTable('takes')
          .set(next)
          .where((of) => of.and(isThe(name)))
          .execute();
        return sent({ ...row, ...next });
      }),
    voice: async ({ student, take }, bar) => {
      const found = await database
        .selectFrom('voices')
        .select(['content', 'checksum'])
        .where('student_id', '=', student)
        .where('take_id', '=', take)
        .where('bar', '=', bar ?? ALL_OF_IT)
        .executeTakeFirst();
      if (!found) return null;
      const content = new Uint8Array(found.content);
      if (checksumOf(content) !== found.checksum) throw new DamagedError();
      return content;
    },
    say: (name, content, bar) =>
      turn(async () => {
        if (!(await find(name))) return null;
        const at = now();
        const spoken = { spoken_at: at, content, checksum: checksumOf(content) };
        await inTransaction(database, async (inside) => {
          await inside
            .insertInto('voices')
            .values({ ...isThe(name), bar: bar ?? ALL_OF_IT, ...spoken })
            .onConflict((on) => on.columns(['student_id', 'take_id', 'bar']).doUpdateSet(spoken))
            .execute();
          await inside
            .updateTable('takes')
            .set((of) => ({ answered_at: at, heard_at: of.fn.coalesce('heard_at', of.val(at)) }))
            .where((of) => of.and(isThe(name)))
            .execute();
        });
        return sent(await find(name));
      }),
    unsay: async (name, bar) => {
      const { numDeletedRows } = await database
        .deleteFrom('voices')
        .where((of) => of.and({ ...isThe(name), bar: bar ?? ALL_OF_IT }))
        .executeTakeFirst();
      return numDeletedRows > 0n;
    },
    remove: (name) =>
      turn(async () => {
        const row = await find(name);
        if (!row) return false;
        await erase({ ...name, checksum: row.checksum });
        return true;
      }),
    keepByHand: async (name, isKept) => {
      const kept_at = isKept ? now() : null;
      await database
        .updateTable('takes')
        .set({ kept_at })
        .where((of) => of.and(isThe(name)))
        .execute();
      return sent(await find(name));
    },
    keeping,
    setKeeping: async ({ takeWeeks }, teacher = FIRST_TEACHER) => {
      const value = String(takeWeeks);
      await database
        .insertInto('notes')
        .values({ key: KEEPING, value })
        .onConflict((on) => on.column('key').doUpdateSet({ value }))
        .execute();
      return keeping(teacher);
    },
    age: () =>
      turn(async () => {
        const old = await aged(await weeksKept());
        const counts = new Map<string, number>();
        for (const file of old) {
          await erase(file);
          counts.set(file.student, (counts.get(file.student) ?? 0) + 1);
        }
        return counts;
      }),
    withFiles: (forget) => turn(() => withFiles(forget)),
    sweep: () =>
      turn(async () => {
        const kept = await names();
        await files.nameAnew(kept);
        await files.keepOnly(kept);
      }),
  };
}
