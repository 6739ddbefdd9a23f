/** Everything in one file, and practice as a table. */
import { CLI } from '@shedbook/words';
import { backupBytes } from '../backup/back-up.ts';
import { type EverythingParts, everything } from '../backup/everything.ts';
import { practiceTable } from '../backup/practice-table.ts';
import type { StorePlace } from '../store/place.ts';
import type { SignInStore } from '../store/sign-in.ts';
import { answer, type Handlers, refuse, teacherOf } from './handlers.ts';

/** What backups and tables are made with. */
export interface BackupParts extends EverythingParts {
  readonly signIn: SignInStore;
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
export function backupHandlers({ place, signIn, ...parts }: BackupParts) {
  const { store, students } = parts;
  return {
    backUp: async () => {
      // It holds what every teacher wrote of their students, which no other reads.
      if (await signIn.areSeveral()) return refuse('school-backup', {});
      const name = `shedbook-${new Date().toISOString().slice(0, 10)}.tar`;
      return answer({ name, type: 'application/x-tar', content: await begun(backupBytes(place)) });
    },
    exportEverything: async (_asked, _signal, caller) => {
      const madeAt = new Date().toISOString();
      const content = await begun(everything(parts, madeAt, teacherOf(caller).id));
      const name = `shedbook-${madeAt.slice(0, 10)}.json`;
      return answer({ name, type: 'application/json', content });
    },
    exportPractice: async ({ query: { student, language } }, _signal, caller) => {
      const { practiceTable: words } = CLI[language].words;
      const of = { teacher: teacherOf(caller).id, student };
      const table = practiceTable({ store, students, words }, of);
      const content = await begun(table);
      return answer({ name: 'practice.csv', type: 'text/csv; charset=utf-8', content });
    },
  } satisfies Partial<Handlers>;
}
