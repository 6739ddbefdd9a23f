/** `shedbook journal`: who did what with what the desk keeps. */
import { journalWords } from '@shedbook/words';
import type { Speaker } from '../terminal.ts';
import type { LoadDesk } from './serve.ts';

/** What the command line asks for. */
export interface JournalRequest {
  /** Folder that lessons are kept in. */
  readonly data?: string;
  /** How many entries. */
  readonly count: number;
  readonly json?: boolean;
}

/** Tells it. @throws InputError where nothing is kept */
export async function journal(
  { data, count, json = false }: JournalRequest,
  { catalogue, say }: Speaker,
  loadDesk: LoadDesk,
): Promise<void> {
  const { readJournal } = await loadDesk();
  const entries = await readJournal(data, count);
  const words = catalogue.words.journal;
  if (json) say(JSON.stringify(entries, null, 2));
  else if (entries.length === 0) say(words.nothing);
  else for (const entry of entries) say(`${entry.at}  ${journalWords(words.entries, entry)}`);
}
