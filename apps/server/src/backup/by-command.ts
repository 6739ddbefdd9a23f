/** Backing up and restoring for the command line: the user's own folder where none is named. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { InputError, type Restored, type WrittenBackup } from '@shedbook/host';
import { defaultDataDir } from '../data-dir.ts';
import { STORE_FILE } from '../store/open.ts';
import { writeBackup } from './back-up.ts';
import { restoreBackup } from './restore.ts';

function folderOf(dataDir: string | undefined): string {
  return dataDir ?? defaultDataDir(process.env, process.platform);
}

/** Writes a backup of a folder into a file. @throws InputError where there is nothing, or it cannot be written */
export async function backUp(dataDir: string | undefined, file: string): Promise<WrittenBackup> {
  const folder = folderOf(dataDir);
  if (!existsSync(join(folder, STORE_FILE)))
    throw new InputError(({ words }) => words.backup.noStore({ folder }));
  return writeBackup(folder, file);
}

/** Puts a backup in the place of what is in a folder. @throws InputError where it is not whole; nothing is changed then */
export function restore(dataDir: string | undefined, file: string): Promise<Restored> {
  return restoreBackup(folderOf(dataDir), file);
}
