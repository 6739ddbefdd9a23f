/**
 * Passphrases of teachers, and where they were given. One teacher needs no name; where there are several, each has their
 * own name and passphrase, which they chose by a letter that the head sent them.
 *
 * Source: RFC 9106 (Argon2id); OWASP Password Storage Cheat Sheet: 19 MiB, two passes, one lane; the same, Authentication
 * Cheat Sheet: whoever gives a name that nobody has waits as long as whoever gives a wrong passphrase.
 */
import { randomBytes } from 'node:crypto';
import { FIRST_TEACHER, folded, type Teacher } from '@shedbook/routes';
import { argon2id, argon2Verify } from 'hash-wasm';
import type { Kysely } from 'kysely';
import { inTransaction } from './engine.ts';
import type { Tables } from './tables.ts';
import { digestOf, newToken } from './token.ts';

/** Who may come to the desk. */
export interface SignInStore {
  /** Whether the first teacher ever had a passphrase. */
  isSet(): Promise<boolean>;
  /** Whether there are several teachers, so that each has to say who comes. */
  areSeveral(): Promise<boolean>;
  /** Sets the first teacher's passphrase, in place of one before; they have to sign in anew, and their passkeys are gone. */
  set(passphrase: string): Promise<void>;
  /** Signs in. @param name who; asked for where there are several. @returns a secret for the cookie; null when the two do not go together */
  signIn(passphrase: string, name?: string): Promise<string | null>;
  /** Signs in somebody who was found to be who they are. @returns a secret for the cookie */
  admit(teacher: string): Promise<string>;
  /** Whose letter a secret is of, if it still opens anything. */
  invited(token: string): Promise<Teacher | null>;
  /** Takes a letter up: its teacher has this passphrase from now on. @returns who; null where it opens nothing */
  accept(token: string, passphrase: string): Promise<Teacher | null>;
  /** Who signed in with a secret, not too long ago. */
  whoIs(token: string): Promise<Teacher | null>;
  /** Whether a secret is that of somebody who signed in, not too long ago. */
  isIn(token: string): Promise<boolean>;
  signOut(token: string): Promise<void>;
}

/** Seconds that signing in holds: thirty days. */
export const SESSION_SECONDS = 30 * 24 * 3600;

/** Days that a letter to a teacher opens the desk. */
export const INVITATION_DAYS = 14;

const SALT_BYTES = 16;
const COST = { parallelism: 1, iterations: 2, memorySize: 19 * 1024, hashLength: 32 } as const;

/** What is kept of a passphrase. */
function hashOf(passphrase: string): Promise<string> {
  return argon2id({ password: passphrase, salt: randomBytes(SALT_BYTES), ...COST, outputType: 'encoded' });
}

/** What stands where nobody has a passphrase: the hash of one that nobody knows. */
let nobodys: Promise<string> | null = null;

async function isRight(passphrase: string, hash: string | undefined): Promise<boolean> {
  // nothing at all is no passphrase, and Argon2 takes none
  if (passphrase === '') return false;
  if (hash !== undefined) return argon2Verify({ password: passphrase, hash });
  nobodys ??= hashOf(newToken());
  await argon2Verify({ password: passphrase, hash: await nobodys });
  return false;
}

/** A store of passphrases over an open database. @param clock gives the time of signing in */
export function createSignInStore(database: Kysely<Tables>, clock: () => Date): SignInStore {
  const now = () => clock().toISOString();
  const daysAgo = (days: number) => new Date(clock().getTime() - days * 24 * 3_600_000).toISOString();
  const eldest = () => daysAgo(SESSION_SECONDS / (24 * 3600));
  const hashFor = async (teacher: string) => {
    const found = database.selectFrom('passphrases').select('hash').where('teacher_id', '=', teacher);
    return (await found.executeTakeFirst())?.hash;
  };
  /** Keeps a passphrase, and lets nobody in who gave the one before, or has a passkey from before. */
  const keep = async (teacher: string, hash: string) =>
    inTransaction(database, async (inside) => {
      const row = inside.insertInto('passphrases').values({ teacher_id: teacher, hash });
      await row.onConflict((on) => on.column('teacher_id').doUpdateSet({ hash })).execute();
      for (const table of ['sessions', 'invitations', 'passkeys'] as const)
        await inside.deleteFrom(table).where('teacher_id', '=', teacher).execute();
    });
  const areSeveral = async () =>
    (await database.selectFrom('teachers').select('id').limit(2).execute()).length > 1;
  const named = async (name: string): Promise<string | null> => {
    const found = database.selectFrom('teachers').select('id').where('finds', '=', folded(name.trim()));
    return (await found.executeTakeFirst())?.id ?? null;
  };
  const whoIs = async (token: string): Promise<Teacher | null> => {
    const found = database
      .selectFrom('sessions')
      .innerJoin('teachers', 'teachers.id', 'sessions.teacher_id')
      .select(['teachers.id', 'name', 'role'])
      .where('token_digest', '=', digestOf(token))
      .where('sessions.made_at', '>=', eldest());
    return (await found.executeTakeFirst()) ?? null;
  };
  const invited = async (token: string): Promise<Teacher | null> => {
    const found = database
      .selectFrom('invitations')
      .innerJoin('teachers', 'teachers.id', 'invitations.teacher_id')
      .select(['teachers.id', 'name', 'role'])
      .where('token_digest', '=', digestOf(token))
      .where('made_at', '>=', daysAgo(INVITATION_DAYS));
    return (await found.executeTakeFirst()) ?? null;
  };
  const admit = async (teacher: string): Promise<string> => {
    const token = newToken();
    await database.deleteFrom('sessions').where('made_at', '<', eldest()).execute();
    const row = { token_digest: digestOf(token), made_at: now(), teacher_id: teacher };
    await database.insertInto('sessions').values(row).execute();
    return token;
  };
  return {
    isSet: async () => (await hashFor(FIRST_TEACHER)) !== undefined,
    areSeveral,
    set: async (passphrase) => keep(FIRST_TEACHER, await hashOf(passphrase)),
    signIn: async (passphrase, name = '') => {
      const teacher = (await areSeveral()) ? await named(name) : FIRST_TEACHER;
      const hash = teacher === null ? undefined : await hashFor(teacher);
      const isThey = await isRight(passphrase, hash);
      return teacher !== null && isThey ? admit(teacher) : null;
    },
    admit,
    invited,
    accept: async (token, passphrase) => {
      const hash = await hashOf(passphrase);
      const teacher = await invited(token);
      if (!teacher) return null;
      const { numDeletedRows } = await database
        .deleteFrom('invitations')
        .where('token_digest', '=', digestOf(token))
        .executeTakeFirst();
      // of two at once one takes it up
      if (numDeletedRows === 0n) return null;
      await keep(teacher.id, hash);
      return teacher;
    },
    whoIs,
    isIn: async (token) => (await whoIs(token)) !== null,
    signOut: async (token) => {
      await database.deleteFrom('sessions').where('token_digest', '=', digestOf(token)).execute();
    },
  };
}
