/**
 * Word that something changed, for whoever has the desk open.
 *
 * Conventions: it is told that something changed and not what, so that nothing leaves by this way; whoever listens asks
 * for what they may see. A teacher hears of their own students, and of nobody else's that anything changed.
 * Source: WHATWG HTML, Server-sent events: an event ends with an empty line, a comment begins with a colon.
 */

/** Milliseconds without a change after which a sign of life goes out, so that nobody between the two hangs up. */
const ALIVE_MS = 20_000;

/** Desks that listen at once. */
const MOST_LISTENERS = 100;

/** What tells of changes. */
export interface Changes {
  /** Something changed. @param teacher of whose students; null for everybody's */
  readonly tell: (teacher: string | null) => void;
  /** An event for every change that a teacher hears of until nobody waits any more; null where too many listen already. */
  readonly listen: (signal: AbortSignal, teacher: string) => AsyncIterable<string> | null;
}

/** Nobody listens yet. */
export function createChanges(): Changes {
  const wakers = new Map<() => void, string>();
  const listen = async function* (signal: AbortSignal, teacher: string): AsyncGenerator<string> {
    let isNew = false;
    let wake: () => void = () => undefined;
    const waker = () => {
      isNew = true;
      wake();
    };
    wakers.set(waker, teacher);
    signal.addEventListener('abort', waker);
    try {
      yield ': here\n\n';
      while (!signal.aborted) {
        if (!isNew)
          await new Promise<void>((resolve) => {
            const timer = setTimeout(resolve, ALIVE_MS);
            timer.unref();
            wake = () => {
              clearTimeout(timer);
              resolve();
            };
          });
        if (signal.aborted) return;
        yield isNew ? 'data: students\n\n' : ': here\n\n';
        isNew = false;
      }
    } finally {
      wakers.delete(waker);
    }
  };
  return {
    tell: (teacher) => {
      for (const [waker, of] of wakers) if (teacher === null || of === teacher) waker();
    },
    listen: (signal, teacher) => (wakers.size >= MOST_LISTENERS ? null : listen(signal, teacher)),
  };
}
