/**
 * Work that may be hostile, in a thread of its own: one order after the other, each with a deadline and all with a cap
 * on memory, so that nothing that a stranger's file does stops what else goes on.
 *
 * Conventions: whoever was served longest ago comes next, however much another has ordered; an order that nobody waits
 * for any more is not begun, and ended where that is asked for.
 */
import { SHARE_ENV, Worker } from 'node:worker_threads';
import { type ProcessLimits, watchProcess } from './watch-process.ts';

/** An order took more time or memory than it is given. */
export class TooMuchError extends Error {
  override readonly name = 'TooMuchError';
}

/** How an order is to be done. */
export interface OrderTerms<News = never> {
  /** Whose order it is: a lesson, a file. */
  readonly of: string;
  readonly deadlineMs: number;
  /** What the whole program may take while the order is on its way, for a program that does one thing at a time. */
  readonly process?: ProcessLimits;
  /** Aborted when nobody waits any more. */
  readonly signal?: AbortSignal;
  /** Whether work that nobody waits for is ended: left alone where the next one has something of it. */
  readonly endsWhenLeft?: boolean;
  /** Hears how far it is, from a thread that tells. */
  readonly tell?: (news: News) => void;
}

/** What a thread says of an order that is on its way. */
type Progress = { readonly kind: 'progress' };

function isProgress(message: unknown): message is Progress {
  return (message as { readonly kind?: unknown } | null)?.kind === 'progress';
}

/** A thread that takes orders. */
export interface Thread<Asked, Answered, News extends Progress = never> {
  /** Starts it, for an order that may come soon. */
  warm(): void;
  /** @throws TooMuchError where it takes too much; Error with the thread's own words where it breaks */
  ask(asked: Asked, terms: OrderTerms<News>): Promise<Answered>;
  close(): Promise<void>;
}

interface Waiting<Asked, Answered, News> {
  readonly asked: Asked;
  readonly terms: OrderTerms<News>;
  readonly resolve: (answered: Answered) => void;
  readonly reject: (error: Error) => void;
}

/** Bytes that the objects of a thread take at most; buffers and compiled code come on top. */
export interface ThreadLimits {
  readonly memoryBytes: number;
}

function isOutOfMemory(error: unknown): boolean {
  return (error as { readonly code?: unknown } | null)?.code === 'ERR_WORKER_OUT_OF_MEMORY';
}

/** A thread that runs a file; it starts with the first order. */
export function createThread<Asked, Answered, News extends Progress = never>(
  file: URL,
  { memoryBytes }: ThreadLimits,
): Thread<Asked, Answered, News> {
  type Order = Waiting<Asked, Answered, News>;
  let queue: readonly Order[] = [];
  const servedAt = new Map<string, number>();
  let turn = 0;
  let worker: Worker | null = null;
  let current: Order | null = null;
  let deadline: NodeJS.Timeout | undefined;
  let endWatch: (() => void) | undefined;

  const rest = () => {
    clearTimeout(deadline);
    endWatch?.();
  };
  const settle = (how: (waiting: Order) => void) => {
    const done = current;
    rest();
    current = null;
    if (done) how(done);
    next();
  };
  const giveUp = (error: Error) => {
    const old = worker;
    worker = null;
    void old?.terminate();
    settle(({ reject }) => reject(error));
  };
  const open = () => {
    const fresh = new Worker(file, {
      execArgv: [],
      // what the program is told of its surroundings, as where other programs lie, holds for the thread as well
      env: SHARE_ENV,
      resourceLimits: { maxOldGenerationSizeMb: memoryBytes / 2 ** 20 },
    });
    fresh.on('message', (said: Answered | News) => {
      if (worker !== fresh) return;
      if (isProgress(said)) current?.terms.tell?.(said as News);
      else settle(({ resolve }) => resolve(said as Answered));
    });
    fresh.on(
      'error',
      (error) => worker === fresh && giveUp(isOutOfMemory(error) ? new TooMuchError() : error),
    );
    fresh.on('exit', () => worker === fresh && giveUp(new Error('the thread ended')));
    fresh.unref();
    return fresh;
  };
  const longestAgo = () =>
    queue.reduce((best, each) =>
      (servedAt.get(each.terms.of) ?? 0) < (servedAt.get(best.terms.of) ?? 0) ? each : best,
    );
  function next(): void {
    if (current || queue.length === 0) return;
    const chosen = longestAgo();
    queue = queue.filter((each) => each !== chosen);
    if (queue.length === 0) servedAt.clear();
    turn += 1;
    servedAt.set(chosen.terms.of, turn);
    current = chosen;
    worker ??= open();
    const tooMuch = () => giveUp(new TooMuchError());
    deadline = setTimeout(tooMuch, chosen.terms.deadlineMs);
    endWatch = chosen.terms.process && watchProcess(chosen.terms.process, tooMuch);
    worker.postMessage(chosen.asked);
  }
  const leave = (waiting: Order) => {
    const isQueued = queue.includes(waiting);
    queue = queue.filter((each) => each !== waiting);
    if (isQueued) waiting.reject(new Error('nobody waits'));
    else if (current === waiting && waiting.terms.endsWhenLeft) giveUp(new Error('nobody waits'));
  };
  return {
    warm: () => {
      worker ??= open();
    },
    ask: (asked, terms) =>
      new Promise((resolve, reject) => {
        const waiting = { asked, terms, resolve, reject };
        queue = [...queue, waiting];
        terms.signal?.addEventListener('abort', () => leave(waiting), { once: true });
        next();
      }),
    close: async () => {
      rest();
      const old = worker;
      worker = null;
      await old?.terminate();
    },
  };
}
