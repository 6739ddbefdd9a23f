/** The journal on the desk. */
import type { Journal } from '../store/journal.ts';
import { answer, type Handlers, teacherOf } from './handlers.ts';

/** What it is read from. */
export interface JournalParts {
  readonly journal: Journal;
}

/** Answers the route of the journal. */
export function journalHandlers({ journal }: JournalParts) {
  return {
    readJournal: async ({ query: { after } }, _signal, caller) =>
      answer(await journal.page(after ?? null, teacherOf(caller))),
  } satisfies Partial<Handlers>;
}
