/** Signing in and out. */
import type { Session, Teacher } from '@shedbook/routes';
import type { PasskeyStore } from '../store/passkeys.ts';
import type { SignInStore } from '../store/sign-in.ts';
import { countAttempts } from '../week/attempts.ts';
import type { Whereabouts } from './guard.ts';
import { answer, type Handlers, refuse } from './handlers.ts';
import { passkeyPlace } from './passkey-place.ts';

/** Wrong passphrases that one caller may give within a quarter of an hour. */
const LIMITS = { most: 5, withinMs: 15 * 60_000 } as const;

/** What signing in needs. */
export interface SessionParts {
  readonly signIn: SignInStore;
  readonly passkeys: PasskeyStore;
  readonly where: Whereabouts;
  /** Whether anybody has to sign in here. */
  readonly asksWho: () => Promise<boolean>;
  /** Milliseconds that never go back. */
  readonly clock: () => number;
}

/** What somebody's browser is told of who came. */
export async function toldOf(
  { signIn, passkeys, where }: Pick<SessionParts, 'signIn' | 'passkeys' | 'where'>,
  teacher: Teacher | null,
): Promise<Session> {
  return {
    state: teacher ? 'in' : 'out',
    ...((await signIn.areSeveral()) ? { school: { teacher } } : {}),
    ...(passkeyPlace(where) ? { hasPasskeys: await passkeys.areAny() } : {}),
  };
}

/** Answers the routes of signing in. */
export function sessionHandlers(parts: SessionParts) {
  const { signIn, asksWho, clock } = parts;
  const attempts = countAttempts(LIMITS, clock);
  const told = (teacher: Teacher | null) => toldOf(parts, teacher);
  return {
    readSession: async (_asked, _signal, { session }) => {
      if (!(await asksWho())) return answer({ state: 'open' as const });
      return answer(await told(session === null ? null : await signIn.whoIs(session)));
    },
    acceptInvitation: async ({ body }, _signal, { ip }) => {
      const waitSeconds = attempts.waitSeconds(ip);
      if (waitSeconds > 0) return refuse('too-often', { waitSeconds });
      attempts.failed(ip);
      const teacher = await signIn.accept(body.token, body.passphrase);
      if (!teacher) return refuse('no-such-invitation', {});
      attempts.forgive(ip);
      const session = await signIn.admit(teacher.id);
      return { ...answer(await told(teacher)), session, by: teacher.id };
    },
    signIn: async ({ body }, _signal, { ip }) => {
      const waitSeconds = attempts.waitSeconds(ip);
      if (waitSeconds > 0) return refuse('too-often', { waitSeconds });
      // Counted before it is known, so that many at once do not slip through together.
      attempts.failed(ip);
      const session = await signIn.signIn(body.passphrase, body.name);
      const teacher = session === null ? null : await signIn.whoIs(session);
      if (session === null || !teacher) return refuse('wrong-passphrase', {});
      attempts.forgive(ip);
      return { ...answer(await told(teacher)), session, by: teacher.id };
    },
    signOut: async (_asked, _signal, { session }) => {
      const teacher = session === null ? null : await signIn.whoIs(session);
      if (session !== null) await signIn.signOut(session);
      return { ...answer(null), session: null, ...(teacher ? { by: teacher.id } : {}) };
    },
  } satisfies Partial<Handlers>;
}
