/** Signing in and out. */
import type { SignInStore } from '../store/sign-in.ts';
import { countAttempts } from '../week/attempts.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** Wrong passphrases that one caller may give within a quarter of an hour. */
const LIMITS = { most: 5, withinMs: 15 * 60_000 } as const;

/** What signing in needs. */
export interface SessionParts {
  readonly signIn: SignInStore;
  /** Whether anybody has to sign in here. */
  readonly asksWho: boolean;
  /** Milliseconds that never go back. */
  readonly clock: () => number;
}

/** Answers the routes of signing in. */
export function sessionHandlers({ signIn, asksWho, clock }: SessionParts) {
  const attempts = countAttempts(LIMITS, clock);
  return {
    readSession: async (_asked, _signal, { session }) => {
      if (!asksWho) return answer({ state: 'open' as const });
      const isIn = session !== null && (await signIn.isIn(session));
      return answer({ state: isIn ? ('in' as const) : ('out' as const) });
    },
    signIn: async ({ body }, _signal, { ip }) => {
      const waitSeconds = attempts.waitSeconds(ip);
      if (waitSeconds > 0) return refuse('too-often', { waitSeconds });
      // Counted before it is known, so that many at once do not slip through together.
      attempts.failed(ip);
      const session = await signIn.signIn(body.passphrase);
      if (session === null) return refuse('wrong-passphrase', {});
      attempts.forgive(ip);
      return { ...answer({ state: 'in' as const }), session };
    },
    signOut: async (_asked, _signal, { session }) => {
      if (session !== null) await signIn.signOut(session);
      return { ...answer(null), session: null };
    },
  } satisfies Partial<Handlers>;
}
