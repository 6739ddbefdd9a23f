/**
 * The teacher's passphrase, and where it was given: one for the whole desk.
 *
 * Source: RFC 9106 (Argon2id); OWASP Password Storage Cheat Sheet: 19 MiB, two passes, one lane.
 */
import { randomBytes } from 'node:crypto';
import { argon2id, argon2Verify } from 'hash-wasm';
import type { Kysely } from 'kysely';
import { inTransaction } from './engine.ts';
import type { Tables } from './tables.ts';
import { digestOf, newToken } from './token.ts';

/** Who may come to the desk. */
export interface SignInStore {
  /** Whether a passphrase was ever set. */
  isSet(): Promise<boolean>;
  /** Sets the passphrase, in place of one before; whoever had signed in has to do so again. */
  set(passphrase: string): Promise<void>;
  /** Signs in. @returns a secret for the cookie; null when the passphrase is another */
  signIn(passphrase: string): Promise<string | null>;
  /** Whether a secret is that of somebody who signed in, not too long ago. */
  isIn(token: string): Promise<boolean>;
  signOut(token: string): Promise<void>;
}

/** Characters that a passphrase has at least. Source: NIST SP 800-63B, section 5.1.1.1, asks for eight. */
export const SHORTEST_PASSPHRASE = 10;

/** Characters that one has at most: more would only cost time. */
export const LONGEST_PASSPHRASE = 1000;

/** Seconds that signing in holds: thirty days. */
export const SESSION_SECONDS = 30 * 24 * 3600;

const KEY = 'passphrase';
const SALT_BYTES = 16;
const COST = { parallelism: 1, iterations: 2, memorySize: 19 * 1024, hashLength: 32 } as const;

/** A store of the passphrase over an open database. @param clock gives the time of signing in */
export function createSignInStore(database: Kysely<Tables>, clock: () => Date): SignInStore {
  const kept = async () =>
    (await database.selectFrom('notes').select('value').where('key', '=', KEY).executeTakeFirst())?.value;
  const eldest = () => new Date(clock().getTime() - SESSION_SECONDS * 1000).toISOString();
  return {
    isSet: async () => (await kept()) !== undefined,
    set: async (passphrase) => {
      const salt = randomBytes(SALT_BYTES);
      const value = await argon2id({ password: passphrase, salt, ...COST, outputType: 'encoded' });
      await inTransaction(database, async (inside) => {
        const note = inside.insertInto('notes').values({ key: KEY, value });
        await note.onConflict((on) => on.column('key').doUpdateSet({ value })).execute();
        await inside.deleteFrom('sessions').execute();
      });
    },
    signIn: async (passphrase) => {
      const hash = await kept();
      // nothing at all is no passphrase, and Argon2 takes none
      if (hash === undefined || passphrase === '' || !(await argon2Verify({ password: passphrase, hash })))
        return null;
      const token = newToken();
      await database.deleteFrom('sessions').where('made_at', '<', eldest()).execute();
      const row = { token_digest: digestOf(token), made_at: clock().toISOString() };
      await database.insertInto('sessions').values(row).execute();
      return token;
    },
    isIn: async (token) => {
      const found = database.selectFrom('sessions').select('made_at').where('made_at', '>=', eldest());
      return (await found.where('token_digest', '=', digestOf(token)).executeTakeFirst()) !== undefined;
    },
    signOut: async (token) => {
      await database.deleteFrom('sessions').where('token_digest', '=', digestOf(token)).execute();
    },
  };
}
