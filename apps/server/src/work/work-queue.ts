/**
 * Work that takes long, in a queue that survives a crash and spreads over all servers of a store: each does one piece of a
 * kind at a time, and what a killed server had begun is begun anew by the next.
 */
import { randomUUID } from 'node:crypto';
import type { NewWork, Work, WorkShelf } from './work-shelf.ts';

/** What came of a piece of work. */
export interface WorkEnd {
  readonly at: 'done' | 'failed';
  /** Kept beside it. */
  readonly told: string | null;
}

/** Does a piece of work; aborted where it is taken away, or the server ends. */
export type Worker = (work: NewWork, signal: AbortSignal, tell: (told: string) => void) => Promise<WorkEnd>;

/** The queue. */
export interface WorkQueue {
  /** Orders a piece of work. */
  add(work: NewWork): Promise<void>;
  /** How a piece of work is, and notes that somebody asked; null where there is none. */
  find(id: string): Promise<Work | null>;
  list(): Promise<readonly Work[]>;
  /** Takes a piece of work away; whoever does it leaves off. @returns whether it was there */
  remove(id: string): Promise<boolean>;
  /** Does work of a kind from now on, one piece after the other. */
  work(kind: string, worker: Worker): void;
  /** Lets go of what is begun, for whoever comes next. */
  close(): Promise<void>;
}

/** Milliseconds between two looks whether there is work, or whether it is still wanted. */
const LOOK_MS = 1000;

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

/** A pause that can be cut short. */
function createPause() {
  let end = () => {};
  return {
    end: () => end(),
    rest: (ms: number) =>
      new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, ms);
        timer.unref();
        end = () => {
          clearTimeout(timer);
          resolve();
        };
      }),
  };
}

/** A queue over a shelf. */
export function createWorkQueue(shelf: WorkShelf): WorkQueue {
  const holder = randomUUID();
  const pauses: ReturnType<typeof createPause>[] = [];
  const begun = new Map<string, AbortController>();
  const loops: Promise<void>[] = [];
  let isClosed = false;
  const wake = () => {
    for (const pause of pauses) pause.end();
  };
  /** Does one piece of work, and says all the time that it is held. */
  const doOne = async (work: NewWork, worker: Worker): Promise<void> => {
    const control = new AbortController();
    begun.set(work.id, control);
    let told: string | null = null;
    const beat = setInterval(() => {
      // a database that is away for a while is no reason to leave off
      const held = shelf.hold(work.id, holder, told).catch(() => true);
      void held.then((isHeld) => isHeld || control.abort());
    }, LOOK_MS);
    try {
      const tell = (next: string) => {
        told = next;
      };
      const end = await worker(work, control.signal, tell);
      if (!control.signal.aborted) await shelf.end(work.id, holder, end);
    } catch (error) {
      if (control.signal.aborted) return;
      process.stderr.write(`Internal error: ${(error as Error).stack}\n`);
      await shelf.end(work.id, holder, { at: 'failed', told });
    } finally {
      clearInterval(beat);
      begun.delete(work.id);
      if (isClosed) await shelf.letGo(work.id, holder);
    }
  };
  const loop = async (kind: string, worker: Worker, pause: ReturnType<typeof createPause>) => {
    while (!isClosed) {
      const work = await shelf.take(kind, holder).catch(() => null);
      if (work) await doOne(work, worker).catch(() => undefined);
      else if (!isClosed) await pause.rest(LOOK_MS);
    }
  };
  return {
    add: async (work) => {
      await shelf.add(work);
      wake();
    },
    find: async (id) => {
      if (!UUID.test(id)) return null;
      const found = await shelf.find(id);
      if (found && found.idleMs > LOOK_MS) await shelf.ask(id);
      return found;
    },
    list: shelf.list,
    remove: async (id) => {
      if (!UUID.test(id)) return false;
      const wasThere = await shelf.remove(id);
      begun.get(id)?.abort();
      return wasThere;
    },
    work: (kind, worker) => {
      const pause = createPause();
      pauses.push(pause);
      loops.push(
        shelf
          .askAll()
          .catch(() => undefined)
          .then(() => loop(kind, worker, pause)),
      );
    },
    close: async () => {
      isClosed = true;
      wake();
      for (const control of begun.values()) control.abort();
      await Promise.all(loops);
      await shelf.close();
    },
  };
}
