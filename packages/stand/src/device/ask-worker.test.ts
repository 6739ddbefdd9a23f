import { afterEach, expect, it, vi } from 'vitest';
import { askWorker, GIVEN_UP_MS, type Thread } from './ask-worker.ts';

afterEach(() => vi.useRealTimers());

/** A thread that does what a test says, and notes whether it was ended. */
function threadThat(work: (thread: Thread) => void) {
  const seen = { ended: 0 };
  const thread: Thread = {
    onmessage: null,
    onerror: null,
    postMessage: () => work(thread),
    terminate: () => {
      seen.ended += 1;
    },
  };
  return { thread, seen };
}

const hear = (thread: Thread, data: string) =>
  thread.onmessage?.call(thread as Worker, { data } as MessageEvent<string>);

it('[ST3705] ends work beside the page with its answer, where it breaks down, where it is left and after its time', async () => {
  vi.useFakeTimers();
  const answers = threadThat((thread) => hear(thread, 'heard'));
  expect(await askWorker(answers.thread, 'order')).toBe('heard');
  const breaks = threadThat((thread) => thread.onerror?.call(thread as Worker, {} as ErrorEvent));
  await expect(askWorker(breaks.thread, 'order')).rejects.toThrow('broke down');
  const leaving = new AbortController();
  const left = threadThat(() => undefined);
  const wanted = expect(askWorker(left.thread, 'order', { signal: leaving.signal })).rejects.toThrow(
    'was left',
  );
  leaving.abort();
  await wanted;
  const silent = threadThat(() => undefined);
  const late = expect(askWorker(silent.thread, 'order')).rejects.toThrow('took too long');
  // definition: fifteen minutes of sixty seconds
  expect(GIVEN_UP_MS).toBe(15 * 60 * 1000);
  await vi.advanceTimersByTimeAsync(GIVEN_UP_MS);
  await late;
  const hostile = threadThat(() => undefined);
  const soon = expect(askWorker(hostile.thread, 'order', { deadlineMs: 10 })).rejects.toThrow('too long');
  await vi.advanceTimersByTimeAsync(10);
  await soon;
  expect([answers, breaks, left, silent, hostile].map(({ seen }) => seen.ended)).toEqual([1, 1, 1, 1, 1]);
});
