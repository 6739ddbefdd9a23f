/** Reading files of other programs beside the server: each in the time and memory that it is given. */
import { createThread, threadFile } from '@shedbook/host';
import type { WhoWaits } from '../sheet/sheet-maker.ts';
import type { ImportOutcome } from './import-lesson.ts';
import type { ImportAnswer, ImportOrder } from './import-worker.ts';

/** Reads files. */
export interface ImportMaker {
  /** The lesson in a file, or why there is none. @throws TooMuchError where reading takes too much */
  read(bytes: Uint8Array, file: string, who: WhoWaits): Promise<ImportOutcome>;
  close(): Promise<void>;
}

const DEADLINE_MS = 40_000;
const MEMORY_BYTES = 400 * 2 ** 20;

/** A reader; its thread starts with the first file. */
export function createImportMaker(): ImportMaker {
  const thread = createThread<ImportOrder, ImportAnswer>(threadFile(import.meta.url, 'import-worker'), {
    memoryBytes: MEMORY_BYTES,
  });
  return {
    read: async (bytes, file, who) => {
      const answer = await thread.ask(
        { bytes, file },
        { ...who, deadlineMs: DEADLINE_MS, endsWhenLeft: true },
      );
      if (answer.kind === 'broken') throw new Error(answer.message);
      return answer;
    },
    close: thread.close,
  };
}
