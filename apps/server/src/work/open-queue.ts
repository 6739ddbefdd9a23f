/** Opening the queue of work where the store is; what PostgreSQL takes is loaded only where it is asked for. */
import type { Kysely } from 'kysely';
import type { StorePlace } from '../store/place.ts';
import type { Tables } from '../store/tables.ts';
import { openFileShelf } from './file-shelf.ts';
import { createWorkQueue, type WorkQueue } from './work-queue.ts';

/** Everything that is made beside the server and outlasts it. */
export const WORK_KINDS = ['film'] as const;

/** The queue of a store. */
export async function openQueue(
  { dataDir, address }: StorePlace,
  database: Kysely<Tables>,
): Promise<WorkQueue> {
  if (address === null) return createWorkQueue(openFileShelf(dataDir));
  const { openPostgresShelf } = await import('./postgres-shelf.ts');
  return createWorkQueue(openPostgresShelf(database, WORK_KINDS));
}
