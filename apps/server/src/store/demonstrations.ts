/**
 * Exercises as the teacher plays them, kept with their lesson: whoever opens it by a private link or takes its pack home
 * hears and follows them.
 *
 * Conventions: one of each exercise, by its lasting name; beside the sound stands what was played, so that one whose
 * exercise was changed since is shown to nobody.
 */
import { randomUUID } from 'node:crypto';
import type { Kysely } from 'kysely';
import { checksumOf } from './checksum.ts';
import { holdRow, inTransaction } from './engine.ts';
import { eraseById } from './erased.ts';
import type { Tables } from './tables.ts';

/** A demonstration, as it was made of a performance. */
export interface MadeDemonstration {
  /** Lasting name of the exercise. */
  readonly exercise: string;
  /** What is played in it, as one text. */
  readonly plays: string;
  /** JSON: the demonstration without its sound. */
  readonly facts: string;
  /** A FLAC file. */
  readonly flac: Uint8Array;
}

/** One that is kept, without its sound. */
export interface KeptDemonstration extends Omit<MadeDemonstration, 'flac'> {
  readonly id: string;
  readonly keptAt: string;
}

/** The store of demonstrations. */
export interface DemonstrationStore {
  /** Keeps one in the place of whatever was kept of its exercise. */
  keep(lesson: string, made: MadeDemonstration): Promise<void>;
  /** Those of a lesson, the first kept first. */
  of(lesson: string): Promise<readonly KeptDemonstration[]>;
  /** The same with their sound; one that is no longer what was written is left out. */
  whole(lesson: string): Promise<readonly (KeptDemonstration & MadeDemonstration)[]>;
  /** Erases one. @returns whether there was one */
  erase(id: string): Promise<boolean>;
}

const TOLD = ['id', 'exercise', 'plays', 'facts', 'kept_at as keptAt'] as const;

/** A store over an open database. */
export function createDemonstrationStore(database: Kysely<Tables>, clock: () => Date): DemonstrationStore {
  const now = () => clock().toISOString();
  const kept = (lesson: string) =>
    database.selectFrom('demonstrations').where('lesson_id', '=', lesson).orderBy('kept_at').orderBy('id');
  return {
    keep: async (lesson, { exercise, plays, facts, flac: content }) => {
      const row = { exercise, plays, facts, kept_at: now(), content, checksum: checksumOf(content) };
      await inTransaction(database, async (inside) => {
        await holdRow(inside, 'lessons', lesson);
        const before = inside.deleteFrom('demonstrations').where('lesson_id', '=', lesson);
        await before.where('exercise', '=', exercise).execute();
        await inside
          .insertInto('demonstrations')
          .values({ id: randomUUID(), lesson_id: lesson, ...row })
          .execute();
      });
    },
    of: (lesson) => kept(lesson).select(TOLD).execute(),
    whole: async (lesson) => {
      const rows = await kept(lesson)
        .select([...TOLD, 'content', 'checksum'])
        .execute();
      return rows.flatMap(({ content, checksum, ...told }) => {
        const flac = new Uint8Array(content);
        return checksumOf(flac) === checksum ? [{ ...told, flac }] : [];
      });
    },
    erase: async (id) => (await eraseById(database, 'demonstration', [id], now())) > 0,
  };
}
