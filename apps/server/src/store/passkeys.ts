/**
 * Passkeys of teachers, and the questions that devices are asked.
 *
 * Conventions: a question is answered once, within five minutes; only its digest is kept, in the store, so that another
 * server of the same database takes the answer.
 * Source: W3C, Web Authentication: An API for accessing Public Key Credentials, Level 2, section 13.4.3 (challenges).
 */
import type { StoredPasskey } from '@shedbook/routes';
import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';
import { digestOf } from './token.ts';

/** A passkey as it is checked. */
export interface Passkey {
  /** As the device names it, base64url. */
  readonly id: string;
  readonly teacher: string;
  /** COSE. */
  readonly publicKey: Uint8Array<ArrayBuffer>;
  /** Times that the device signed, as it counts them; 0 where it does not. */
  readonly counter: number;
}

/** The store of passkeys. */
export interface PasskeyStore {
  /** Whether any teacher has one. */
  areAny(): Promise<boolean>;
  /** Those of a teacher, the oldest first. */
  of(teacher: string): Promise<readonly StoredPasskey[]>;
  read(id: string): Promise<Passkey | null>;
  /** Keeps a new one. @returns whether nobody had it */
  add(passkey: Passkey): Promise<boolean>;
  /** Notes that one was used. @param counter as the device counts now */
  used(id: string, counter: number): Promise<void>;
  /** Forgets one of a teacher. @returns whether there was one */
  remove(id: string, teacher: string): Promise<boolean>;
  /** Notes that a device is asked something. @param teacher who adds it; null for whoever signs in */
  ask(challenge: string, teacher: string | null): Promise<void>;
  /** Takes a question back, since it was answered. @returns whether it was asked of them, not too long ago */
  answered(challenge: string, teacher: string | null): Promise<boolean>;
}

/** Milliseconds within which a device has to answer. */
const ANSWER_MS = 5 * 60_000;

/** A store of passkeys over an open database. @param clock gives the time of a change */
export function createPasskeyStore(database: Kysely<Tables>, clock: () => Date): PasskeyStore {
  const now = () => clock().toISOString();
  const eldest = () => new Date(clock().getTime() - ANSWER_MS).toISOString();
  return {
    areAny: async () =>
      (await database.selectFrom('passkeys').select('id').limit(1).executeTakeFirst()) !== undefined,
    of: (teacher) =>
      database
        .selectFrom('passkeys')
        .select(['id', 'made_at as madeAt', 'used_at as usedAt'])
        .where('teacher_id', '=', teacher)
        .orderBy('made_at')
        .orderBy('id')
        .execute(),
    read: async (id) => {
      const row = await database.selectFrom('passkeys').selectAll().where('id', '=', id).executeTakeFirst();
      if (!row) return null;
      const publicKey = Uint8Array.from(Buffer.from(row.public_key, 'base64url'));
      return { id, teacher: row.teacher_id, publicKey, counter: row.counter };
    },
    add: async ({ id, teacher, publicKey, counter }) => {
      const public_key = Buffer.from(publicKey).toString('base64url');
      const row = { id, teacher_id: teacher, public_key, counter, made_at: now(), used_at: null };
      const { numInsertedOrUpdatedRows } = await database
        .insertInto('passkeys')
        .values(row)
        .onConflict((on) => on.column('id').doNothing())
        .executeTakeFirst();
      return numInsertedOrUpdatedRows !== 0n;
    },
    used: async (id, counter) => {
      await database.updateTable('passkeys').set({ counter, used_at: now() }).where('id', '=', id).execute();
    },
    remove: async (id, teacher) => {
      const gone = database.deleteFrom('passkeys').where('id', '=', id).where('teacher_id', '=', teacher);
      return (await gone.executeTakeFirst()).numDeletedRows > 0n;
    },
    ask: async (challenge, teacher) => {
      await database.deleteFrom('challenges').where('made_at', '<', eldest()).execute();
      const row = { token_digest: digestOf(challenge), teacher_id: teacher, made_at: now() };
      await database.insertInto('challenges').values(row).execute();
    },
    answered: async (challenge, teacher) => {
      const asked = database.deleteFrom('challenges').where('token_digest', '=', digestOf(challenge));
      const ours =
        teacher === null ? asked.where('teacher_id', 'is', null) : asked.where('teacher_id', '=', teacher);
      return (await ours.where('made_at', '>=', eldest()).executeTakeFirst()).numDeletedRows > 0n;
    },
  };
}
