/** Work beside the page, in a thread of its own, with an end. */

/** Milliseconds after which it is given up where nobody says otherwise: many times what half an hour of sound takes on a slow tablet. */
export const GIVEN_UP_MS = 900_000;

/** What of a thread is used. */
export type Thread = Pick<Worker, 'onmessage' | 'onerror' | 'postMessage' | 'terminate'>;

/** How long an answer is waited for. */
export interface AskTerms {
  /** Tells that nobody wants to know any more. */
  readonly signal?: AbortSignal;
  readonly deadlineMs?: number;
}

/**
 * What a thread answers to an order; it ends then.
 * @throws Error where it broke down, took too long or was left, which ends it, too
 */
export function askWorker<A>(
  thread: Thread,
  order: unknown,
  { signal, deadlineMs = GIVEN_UP_MS }: AskTerms = {},
): Promise<A> {
  let late: ReturnType<typeof setTimeout>;
  const answer = new Promise<A>((resolve, reject) => {
    const fail = (why: string) => reject(new Error(`Internal error: work beside the page ${why}`));
    late = setTimeout(() => fail('took too long'), deadlineMs);
    signal?.addEventListener('abort', () => fail('was left'), { once: true });
    thread.onmessage = ({ data }: MessageEvent<A>) => resolve(data);
    thread.onerror = () => fail('broke down');
    if (signal?.aborted) fail('was left');
    else thread.postMessage(order);
  });
  return answer.finally(() => {
    clearTimeout(late);
    thread.terminate();
  });
}
