/** Everything in one file, and practice as a table. */
import { CLI } from '@shedbook/words';
import { backupBytes } from '../backup/back-up.ts';
import { practiceTable } from '../backup/practice-table.ts';
import type { LessonStore } from '../store/lessons.ts';
import type { StudentStore } from '../store/students.ts';
import { answer, type Handlers } from './handlers.ts';

/** What backups and tables are made with. */
export interface BackupParts {
  readonly store: LessonStore;
  readonly students: StudentStore;
  /** Folder of the store. */
  readonly dataDir: string;
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
export function backupHandlers({ store, students, dataDir }: BackupParts) {
  return {
    backUp: async () => {
      const name = `shedbook-${new Date().toISOString().slice(0, 10)}.tar`;
      return answer({ name, type: 'application/x-tar', content: await begun(backupBytes(dataDir)) });
    },
    exportPractice: async ({ query: { student, language } }) => {
      const table = practiceTable({ store, students, words: CLI[language].words.practiceTable }, student);
      const content = await begun(table);
      return answer({ name: 'practice.csv', type: 'text/csv; charset=utf-8', content });
    },
  } satisfies Partial<Handlers>;
}
