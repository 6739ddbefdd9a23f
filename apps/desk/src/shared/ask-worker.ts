/** Work beside the page, in a thread of its own, with an end. */

/** Milliseconds after which it is given up: many times what half an hour of sound takes on a slow tablet. */
export const GIVEN_UP_MS = 900_000;

/** What of a thread is used. */
export type Thread = Pick<Worker, 'onmessage' | 'onerror' | 'postMessage' | 'terminate'>;

/**
 * What a thread answers to an order; it ends then.
 * @param signal tells that nobody wants to know any more
 * @throws Error where it broke down, took too long or was left, which ends it, too
 */
export function askWorker<A>(thread: Thread, order: unknown, signal?: AbortSignal): Promise<A> {
  let late: ReturnType<typeof setTimeout>;
  const answer = new Promise<A>((resolve, reject) => {
    const fail = (why: string) => reject(new Error(`Internal error: work beside the page ${why}`));
    late = setTimeout(() => fail('took too long'), GIVEN_UP_MS);
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
