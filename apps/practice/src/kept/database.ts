/**
 * What practice keeps on the device: takes, the log, the latency of each set of devices, small settings.
 *
 * Conventions: nothing here is tied to a version of a pack; lessons are known by their lasting names, so that a
 * new pack finds what an old one left.
 * Source: W3C Indexed Database API 3.0, by way of idb.
 */
import { type IDBPDatabase, openDB } from 'idb';

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

type Schema = { readonly [Name in StoreName]: { readonly key: string; readonly value: object } };

const NAME = 'shedbook-practice';
const VERSION = 1;

let opened: Promise<IDBPDatabase<Schema>> | null = null;

function open(): Promise<IDBPDatabase<Schema>> {
  return openDB<Schema>(NAME, VERSION, {
    upgrade: (database) => {
      for (const name of Object.keys(STORES) as StoreName[]) {
        if (!database.objectStoreNames.contains(name)) {
          database.createObjectStore(name, { keyPath: STORES[name] });
        }
      }
    },
    terminated: () => {
      opened = null;
    },
  });
}

/** The database, opened anew where it could not be opened or was closed by the browser. */
function database(): Promise<IDBPDatabase<Schema>> {
  opened ??= open().catch((error: unknown) => {
    opened = null;
    throw error;
  });
  return opened;
}

/** Everything in a store, in order of its keys. */
export async function readAll<T extends object>(name: StoreName): Promise<readonly T[]> {
  return (await (await database()).getAll(name)) as T[];
}

/** What is kept under a key, or undefined. */
export async function read<T extends object>(name: StoreName, key: string): Promise<T | undefined> {
  return (await (await database()).get(name, key)) as T | undefined;
}

/** Values by the stores that they go to. */
export type Values = Readonly<Partial<Record<StoreName, object>>>;

/**
 * Keeps values under the keys that they carry, all of them or none.
 * @throws DOMException `QuotaExceededError` when there is no room.
 */
export async function keep(values: Values): Promise<void> {
  const names = Object.keys(values) as StoreName[];
  const transaction = (await database()).transaction(names, 'readwrite');
  const puts = names.map((name) => transaction.objectStore(name).put(values[name] ?? {}));
  await Promise.all([...puts, transaction.done]);
}

/** Changes what is kept under a key, undivided by what another window does meanwhile. @returns what is kept now. */
export async function change<T extends object>(
  name: StoreName,
  key: string,
  next: (before: T | undefined) => T,
): Promise<T> {
  const { store, done } = (await database()).transaction(name, 'readwrite');
  const value = next((await store.get(key)) as T | undefined);
  await Promise.all([store.put(value), done]);
  return value;
}

/** Takes a key out of stores, out of all of them or none. */
export async function drop(names: readonly StoreName[], key: string): Promise<void> {
  const transaction = (await database()).transaction(names, 'readwrite');
  await Promise.all([...names.map((name) => transaction.objectStore(name).delete(key)), transaction.done]);
}
