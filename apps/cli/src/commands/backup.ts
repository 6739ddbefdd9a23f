/** `shedbook backup` and `shedbook restore`: everything that the desk keeps, in one file. */
import type { BackupFacts } from '@shedbook/host';
import { sizeWords } from '@shedbook/words';
import type { Speaker } from '../terminal.ts';
import type { LoadDesk } from './serve.ts';

/** What the command line asks for. */
export interface BackupRequest {
  /** Folder that lessons are kept in. */
  readonly data?: string;
  readonly json?: boolean;
}

/** What is not in the backup as it should be. */
function sayDamaged({ damagedTakes: n }: BackupFacts, { catalogue, warn }: Speaker): void {
  if (n > 0) warn(catalogue.words.backup.damagedTakes({ n }));
}

/** Backs up. @throws InputError where that cannot be done */
export async function backup(
  file: string | undefined,
  { data, json = false }: BackupRequest,
  terminal: Speaker,
  loadDesk: LoadDesk,
): Promise<void> {
  const { backUp } = await loadDesk();
  const today = new Date().toISOString().slice(0, 10);
  const written = await backUp(data, file ?? `shedbook-${today}.tar`);
  const { backup: said, sizes } = terminal.catalogue.words;
  const size = sizeWords(sizes, written.bytes);
  terminal.say(json ? JSON.stringify(written, null, 2) : said.written({ ...written, size }));
  sayDamaged(written, terminal);
}

/** Restores a backup. @throws InputError where it is not whole; nothing is changed then */
export async function restoreCommand(
  file: string,
  { data, json = false }: BackupRequest,
  terminal: Speaker,
  loadDesk: LoadDesk,
): Promise<void> {
  const { restore } = await loadDesk();
  const restored = await restore(data, file);
  const said = terminal.catalogue.words.backup;
  if (json) terminal.say(JSON.stringify(restored, null, 2));
  else {
    terminal.say(said.restored(restored));
    if (restored.before !== null) terminal.say(said.before({ file: restored.before }));
    if (restored.leftErased > 0) terminal.say(said.leftErased({ n: restored.leftErased }));
  }
  sayDamaged(restored, terminal);
}
