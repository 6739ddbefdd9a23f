/** Opening the files of takes wherever they lie; what a bucket takes is loaded only where one is named. */

import { randomUUID } from 'node:crypto';
import type { Kysely } from 'kysely';
import type { StorePlace } from './place.ts';
import type { Tables } from './tables.ts';
import { openTakeFiles, type TakeFiles } from './take-files.ts';

/** The files of takes. @throws InputError where a bucket is named that is none */
export async function openTakesOf({
  dataDir,
  takes,
}: Pick<StorePlace, 'dataDir' | 'takes'>): Promise<TakeFiles> {
  if (takes === null) return openTakeFiles(dataDir);
  const { openTakeObjects } = await import('./bucket/take-objects.ts');
  return openTakeObjects(takes);
}

/** The bucket that takes lie in, to be told; null for a folder. */
export async function shownTakes({ takes }: Pick<StorePlace, 'takes'>): Promise<string | null> {
  return takes === null ? null : (await import('./bucket/bucket.ts')).shownBucket(takes);
}

/** Under what a store is called stands among its notes. */
export const STORE_NAME_NOTE = 'store-name';

/**
 * Makes sure that recordings can be kept and erased in the bucket that is named, and that no other store's lie there.
 * @throws InputError where not
 */
export async function settleTakes(
  database: Kysely<Tables>,
  { takes }: Pick<StorePlace, 'takes'>,
  files: TakeFiles,
): Promise<void> {
  if (takes === null) return;
  const fresh = { key: STORE_NAME_NOTE, value: randomUUID() };
  await database
    .insertInto('notes')
    .values(fresh)
    .onConflict((on) => on.doNothing())
    .execute();
  const named = database.selectFrom('notes').select('value').where('key', '=', STORE_NAME_NOTE);
  await files.settle((await named.executeTakeFirstOrThrow()).value);
}
