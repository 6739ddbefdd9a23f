/** Where a store is: a folder, and the database where that is none of the folder's own. */
import { defaultDataDir } from '../data-dir.ts';

/** The setting that names a PostgreSQL database for lessons and students. */
export const STORE_SETTING = 'SHEDBOOK_STORE';

/** The setting that names a bucket of an S3-compatible store for recordings. */
export const TAKES_SETTING = 'SHEDBOOK_TAKES';

/** Where a store is. */
export interface StorePlace {
  /** Folder of recordings and media; of the store, too, where no database is named. */
  readonly dataDir: string;
  /** Address of a PostgreSQL database, with whatever secret is in it; null for the folder's own file. */
  readonly address: string | null;
  /** Address of a bucket for takes; null for a folder beside the store. */
  readonly takes: string | null;
}

/** Where the store is that is meant: the user's own folder, and the database and the bucket that are set, where nothing else is said. */
export function placeOf(dataDir?: string, address?: string): StorePlace {
  return {
    dataDir: dataDir ?? defaultDataDir(process.env, process.platform),
    address: (address ?? process.env[STORE_SETTING]) || null,
    takes: process.env[TAKES_SETTING] || null,
  };
}
