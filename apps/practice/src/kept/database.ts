/**
 * What practice keeps on the device: takes, the log, the latency of each set of devices, small settings.
 *
 * Conventions: nothing here is tied to a version of a pack; lessons are known by their lasting names, so that a
 * new pack finds what an old one left.
 * Source: W3C Indexed Database API 3.0.
 */

/** The stores and the key of each. */
export const STORES = {
  /** What is known of a take. */
  takes: 'id',
  /** Its sound. */
  audio: 'id',
  /** Round trips, by device. */
  latencies: 'device',
  /** The practice log and settings, by name. */
  notes: 'name',
} as const;

/** Name of a store. */
export type StoreName = keyof typeof STORES;

const NAME = 'shedbook-practice';
const VERSION = 1;

function asked<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function open(): Promise<IDBDatabase> {
  const request = indexedDB.open(NAME, VERSION);
  request.onupgradeneeded = () => {
    for (const [name, keyPath] of Object.entries(STORES)) {
      if (!request.result.objectStoreNames.contains(name)) {
        request.result.createObjectStore(name, { keyPath });
      }
    }
  };
  return asked(request);
}

let opened: Promise<IDBDatabase> | null = null;

async function store(name: StoreName, mode: IDBTransactionMode): Promise<IDBObjectStore> {
  opened ??= open();
  const database = await opened.catch((error: unknown) => {
    opened = null;
    throw error;
  });
  return database.transaction(name, mode).objectStore(name);
}

/** Everything in a store, in order of its keys. */
export async function readAll<T>(name: StoreName): Promise<readonly T[]> {
  return asked((await store(name, 'readonly')).getAll() as IDBRequest<T[]>);
}

/** What is kept under a key, or undefined. */
export async function read<T>(name: StoreName, key: string): Promise<T | undefined> {
  return asked((await store(name, 'readonly')).get(key) as IDBRequest<T | undefined>);
}

/** Keeps a value under the key that it carries. @throws DOMException `QuotaExceededError` when there is no room. */
export async function keep<T extends object>(name: StoreName, value: T): Promise<void> {
  await asked((await store(name, 'readwrite')).put(value));
}

/** Changes what is kept under a key, undivided by what another window does meanwhile. @returns what is kept now. */
export async function change<T extends object>(
  name: StoreName,
  key: string,
  next: (before: T | undefined) => T,
): Promise<T> {
  const there = await store(name, 'readwrite');
  const value = next(await asked(there.get(key) as IDBRequest<T | undefined>));
  await asked(there.put(value));
  return value;
}

/** Takes a key out. */
export async function drop(name: StoreName, key: string): Promise<void> {
  await asked((await store(name, 'readwrite')).delete(key));
}
