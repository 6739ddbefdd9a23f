/**
 * What practice keeps on the device: takes, the log, the latency of each set of devices, small settings.
 *
 * Conventions: nothing here is tied to a version of a pack; lessons are known by their lasting names, so that a
 * new pack finds what an old one left. Each student has a database of their own; latencies are the device's.
 * Source: W3C Indexed Database API 3.0, by way of idb.
 */
import { deleteDB, type IDBPDatabase, openDB } from 'idb';
import { sayKept, sayNotKept } from './keeping.ts';
import { ownName } from './students.ts';

/** The stores and the key of each. */
export const STORES = {
  /** What is known of a take. */
  takes: 'id',
  /** Its sound. */
  audio: 'id',
  /** Round trips, by device. */
  latencies: 'device',
  /** Entries of the practice log and other small things, by name. */
  notes: 'name',
} as const;

/** Name of a store. */
export type StoreName = keyof typeof STORES;

type Schema = { readonly [Name in StoreName]: { readonly key: string; readonly value: object } };
type Database = IDBPDatabase<Schema>;

const NAME = 'shedbook-practice';
const VERSION = 1;

const opened = new Map<string, Promise<Database>>();
const goneListeners = new Set<() => void>();

function open(name: string): Promise<Database> {
  return openDB<Schema>(name, VERSION, {
    upgrade: (database) => {
      for (const store of Object.keys(STORES) as StoreName[]) {
        if (!database.objectStoreNames.contains(store)) {
          database.createObjectStore(store, { keyPath: STORES[store] });
        }
      }
    },
    blocking: (_, __, event) => (event.target as IDBDatabase).close(),
    terminated: () => {
      opened.delete(name);
      for (const listener of goneListeners) listener();
    },
  });
}

/** Calls back when the browser closed what was open, as it does where its data are cleared. */
export function onGone(listener: () => void): void {
  goneListeners.add(listener);
}

/** The database that a store lies in, opened anew where it could not be opened or was closed by the browser. */
function databaseOf(store: StoreName): Promise<Database> {
  const name = store === 'latencies' ? NAME : ownName(NAME);
  const known = opened.get(name);
  if (known) return known;
  const opening = open(name).catch((error: unknown) => {
    opened.delete(name);
    throw error;
  });
  opened.set(name, opening);
  return opening;
}

/** Does something with the database, and says whether things are kept. */
async function watched<T>(work: () => Promise<T>, isWriting: boolean): Promise<T> {
  try {
    const result = await work();
    if (isWriting) sayKept();
    return result;
  } catch (error) {
    sayNotKept(error);
    throw error;
  }
}

/** Everything in a store, in order of its keys. */
export function readAll<T extends object>(name: StoreName): Promise<readonly T[]> {
  return watched(async () => (await (await databaseOf(name)).getAll(name)) as T[], false);
}

/** Values that are read at once: so many that a page stands still for hundredths of a second at most. */
const PIECE = 100;

/** Everything in a store whose key begins so, in order of its keys, piece by piece, so that nothing waits for all of it. */
export async function* readPieces<T extends object>(
  name: StoreName,
  beginning: string,
): AsyncGenerator<readonly T[]> {
  const end = `${beginning}\uffff`;
  const pieceAfter = async (after: string | null) => {
    const range = after === null ? IDBKeyRange.bound(beginning, end) : IDBKeyRange.bound(after, end, true);
    return (await (await databaseOf(name)).getAll(name, range, PIECE)) as Record<string, string>[];
  };
  let after: string | null = null;
  for (;;) {
    const piece: readonly Record<string, string>[] = await watched(() => pieceAfter(after), false);
    yield piece as readonly object[] as readonly T[];
    if (piece.length < PIECE) return;
    after = piece.at(-1)?.[STORES[name]] ?? end;
  }
}

/** What is kept under a key, or undefined. */
export function read<T extends object>(name: StoreName, key: string): Promise<T | undefined> {
  return watched(async () => (await (await databaseOf(name)).get(name, key)) as T | undefined, false);
}

/** Values by the stores that they go to. */
export type Values = Readonly<Partial<Record<Exclude<StoreName, 'latencies'>, object>>>;

/**
 * Keeps values under the keys that they carry, all of them or none.
 * @throws DOMException `QuotaExceededError` when there is no room.
 */
export function keep(values: Values): Promise<void> {
  return watched(async () => {
    const names = Object.keys(values) as (keyof Values)[];
    const transaction = (await databaseOf('notes')).transaction(names, 'readwrite');
    const puts = names.map((name) => transaction.objectStore(name).put(values[name] ?? {}));
    await Promise.all([...puts, transaction.done]);
  }, true);
}

/** Keeps several values of one store, piece by piece, each as a whole. @throws DOMException as {@link keep} */
export async function keepMany(name: StoreName, values: readonly object[]): Promise<void> {
  for (let from = 0; from < values.length; from += PIECE)
    await watched(async () => {
      const { store, done } = (await databaseOf(name)).transaction(name, 'readwrite');
      await Promise.all([...values.slice(from, from + PIECE).map((value) => store.put(value)), done]);
    }, true);
}

/** Takes a key out of stores, out of all of them or none. */
export async function drop(names: readonly StoreName[], key: string): Promise<void> {
  const transaction = (await databaseOf('notes')).transaction(names, 'readwrite');
  await Promise.all([...names.map((name) => transaction.objectStore(name).delete(key)), transaction.done]);
}

/** Deletes everything that was kept of a student. */
export function deleteDatabase(student: string): Promise<void> {
  return deleteDB(ownName(NAME, student));
}
