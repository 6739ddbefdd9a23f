/** Everything in one file, and practice as a table. */
import { CLI } from '@shedbook/words';
import { backupBytes } from '../backup/back-up.ts';
import { type EverythingParts, everything } from '../backup/everything.ts';
import { practiceTable } from '../backup/practice-table.ts';
import type { StorePlace } from '../store/place.ts';
import { answer, type Handlers } from './handlers.ts';

/** What backups and tables are made with. */
export interface BackupParts extends EverythingParts {
  /** Where the store is. */
  readonly place: StorePlace;
}

/** Bytes that come bit by bit, once the first are there: what cannot be begun is refused instead. */
async function begun(bytes: AsyncGenerator<Uint8Array, unknown>): Promise<AsyncIterable<Uint8Array>> {
  const first = await bytes.next();
  return (async function* () {
    try {
      if (first.done) return;
      yield first.value;
      yield* bytes;
    } finally {
      await bytes.return(undefined);
    }
  })();
}

/** Answers the routes of backups and tables. */
export function backupHandlers({ place, ...parts }: BackupParts) {
  const { store, students } = parts;
  return {
    backUp: async () => {
      const name = `shedbook-${new Date().toISOString().slice(0, 10)}.tar`;
      return answer({ name, type: 'application/x-tar', content: await begun(backupBytes(place)) });
    },
    exportEverything: async () => {
      const madeAt = new Date().toISOString();
      const content = await begun(everything(parts, madeAt));
      const name = `shedbook-${madeAt.slice(0, 10)}.json`;
      return answer({ name, type: 'application/json', content });
    },
    exportPractice: async ({ query: { student, language } }) => {
      const table = practiceTable({ store, students, words: CLI[language].words.practiceTable }, student);
      const content = await begun(table);
      return answer({ name: 'practice.csv', type: 'text/csv; charset=utf-8', content });
    },
  } satisfies Partial<Handlers>;
}
