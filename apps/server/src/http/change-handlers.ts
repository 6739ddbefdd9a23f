/** Telling the desk that something changed. */
import type { SignInStore } from '../store/sign-in.ts';
import type { Changes } from '../week/changes.ts';
import { answer, type Handlers, refuse, teacherOf } from './handlers.ts';

/** What telling needs. */
export interface ChangeParts {
  readonly changes: Changes;
  readonly signIn: SignInStore;
  /** Whether whoever comes to the desk has to sign in. */
  readonly asksWho: () => Promise<boolean>;
}

/** Seconds after which one that was refused may try again. */
const WAIT_SECONDS = 60;

/** Answers the route of changes. */
export function changeHandlers({ changes, signIn, asksWho }: ChangeParts) {
  /** Whoever signs out hears nothing more. */
  const whileIn = async function* (events: AsyncIterable<string>, session: string | null) {
    for await (const event of events) {
      if ((await asksWho()) && (session === null || !(await signIn.isIn(session)))) return;
      yield event;
    }
  };
  return {
    listenToChanges: async (_asked, signal, caller) => {
      const events = changes.listen(signal, teacherOf(caller).id);
      if (!events) return refuse('too-often', { waitSeconds: WAIT_SECONDS });
      return answer(whileIn(events, caller.session));
    },
  } satisfies Partial<Handlers>;
}
