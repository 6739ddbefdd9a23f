/** Opening the store in whichever database it lies; what PostgreSQL takes is loaded only where it is asked for. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { makeFolder } from '@shedbook/host';
import type { Kysely } from 'kysely';
import { openDatabase, STORE_FILE } from './open.ts';
import type { StorePlace } from './place.ts';
import type { Tables } from './tables.ts';

/**
 * Opens (and creates or brings up to date) the store in a place.
 * @throws InputError where the folder or the database stands in the way
 */
export async function openStore({
  dataDir,
  address,
}: Pick<StorePlace, 'address' | 'dataDir'>): Promise<Kysely<Tables>> {
  if (address === null) return openDatabase(dataDir);
  makeFolder(dataDir, 0o700);
  const { openPostgres } = await import('./postgres/open.ts');
  return openPostgres(address);
}

/** Whether there is a store in a place. @throws InputError where its database stands in the way */
export async function hasStore({ dataDir, address }: StorePlace): Promise<boolean> {
  if (address === null) return existsSync(join(dataDir, STORE_FILE));
  const { lookInto } = await import('./postgres/open.ts');
  const { database, version } = await lookInto(address);
  await database.destroy();
  return version > 0;
}

/** Where a store is, to be told: its folder, or its database without the secret. */
export async function shownPlace({ dataDir, address }: StorePlace): Promise<string> {
  if (address === null) return dataDir;
  const { shownAddress } = await import('./postgres/faults.ts');
  return shownAddress(address);
}
