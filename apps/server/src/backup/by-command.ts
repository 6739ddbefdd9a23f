import { InputError, type Restored, type WrittenBackup } from '@shedbook/host';
import type { JournalEntry, JournalPage } from '@shedbook/routes';
import { openJournal } from '../store/journal.ts';
import { openFault } from '../store/open.ts';
import { hasStore, openStore, shownPlace } from '../store/open-store.ts';
import { placeOf, type StorePlace } from '../store/place.ts';
import { writeBackup } from './back-up.ts';
import { restoreBackup } from './restore.ts';

/** @throws InputError where nothing is kept in a folder, and no database goes with it */
async function refuseEmpty(place: StorePlace): Promise<void> {
  if (await hasStore(place)) return;
  const folder = await shownPlace(place);
  throw new InputError(({ words }) => words.backup.noStore({ folder }));
}

/** What is done in a folder. @throws InputError where the folder is at fault */
async function within<Done>(folder: string, work: Promise<Done>): Promise<Done> {
  try {
    return await work;
  } catch (error) {
    throw openFault(error, folder);
  }
}

/** Writes a backup of a folder into a file. @throws InputError where there is nothing, or it cannot be written */
export async function backUp(
  dataDir: string | undefined,
  file: string,
  address?: string,
): Promise<WrittenBackup> {
  const place = placeOf(dataDir, address);
  await refuseEmpty(place);
  return within(place.dataDir, writeBackup(place, file));
}

/** The last entries of the journal of a folder, the last first. @throws InputError where nothing is kept there */
export async function readJournal(
  dataDir: string | undefined,
  most: number,
  address?: string,
): Promise<readonly JournalEntry[]> {
  const place = placeOf(dataDir, address);
  await refuseEmpty(place);
  return within(place.dataDir, entriesIn(place, most));
}

async function entriesIn(place: StorePlace, most: number): Promise<readonly JournalEntry[]> {
  const database = await openStore(place);
  try {
    const journal = openJournal(database, () => new Date());
    const entries: JournalEntry[] = [];
    for (let after: string | null = null; entries.length < most; ) {
      const page: JournalPage = await journal.page(after);
      entries.push(...page.entries);
      if (page.next === null) break;
      after = page.next;
    }
    return entries.slice(0, most);
  } finally {
    await database.destroy();
  }
}

/** Puts a backup in the place of what is in a folder. @throws InputError where it is not whole; nothing is changed then */
export function restore(dataDir: string | undefined, file: string, address?: string): Promise<Restored> {
  const place = placeOf(dataDir, address);
  return within(place.dataDir, restoreBackup(place, file));
}
