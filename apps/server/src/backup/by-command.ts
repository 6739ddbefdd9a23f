/** Backing up and restoring for the command line: the user's own folder where none is named. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { InputError, type Restored, type WrittenBackup } from '@shedbook/host';
import type { JournalEntry, JournalPage } from '@shedbook/routes';
import { defaultDataDir } from '../data-dir.ts';
import { openJournal } from '../store/journal.ts';
import { openDatabase, openFault, STORE_FILE } from '../store/open.ts';
import { writeBackup } from './back-up.ts';
import { restoreBackup } from './restore.ts';

function folderOf(dataDir: string | undefined): string {
  return dataDir ?? defaultDataDir(process.env, process.platform);
}

/** @throws InputError where nothing is kept in a folder. */
function refuseEmpty(folder: string): void {
  if (!existsSync(join(folder, STORE_FILE)))
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
export async function backUp(dataDir: string | undefined, file: string): Promise<WrittenBackup> {
  const folder = folderOf(dataDir);
  refuseEmpty(folder);
  return within(folder, writeBackup(folder, file));
}

/** The last entries of the journal of a folder, the last first. @throws InputError where nothing is kept there */
export async function readJournal(
  dataDir: string | undefined,
  most: number,
): Promise<readonly JournalEntry[]> {
  const folder = folderOf(dataDir);
  refuseEmpty(folder);
  return within(folder, entriesIn(folder, most));
}

async function entriesIn(folder: string, most: number): Promise<readonly JournalEntry[]> {
  const database = openDatabase(folder);
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
export function restore(dataDir: string | undefined, file: string): Promise<Restored> {
  const folder = folderOf(dataDir);
  return within(folder, restoreBackup(folder, file));
}
