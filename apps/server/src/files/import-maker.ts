/**
 * Reading what comes from elsewhere beside the server, files of other programs, long lessons and takes: each in the time and memory
 * that it is given, whoever was served longest ago next.
 */
import { createThread, threadFile } from '@shedbook/host';
import type { TakeFacts } from '@shedbook/routes';
import type { WhoWaits } from '../sheet/sheet-maker.ts';
import { type Summary, summarise } from '../store/summary.ts';
import { bytesOfFacts, readTakeFacts } from '../week/read-take.ts';
import type { ImportOutcome } from './import-lesson.ts';
import type { ImportAnswer, ImportOrder } from './import-worker.ts';

/** Reads files, lessons and takes. */
export interface ImportMaker {
  /** The lesson in a file, or why there is none. @throws TooMuchError where reading takes too much */
  read(bytes: Uint8Array, file: string, who: WhoWaits): Promise<ImportOutcome>;
  /** The summary of a lesson's text. @throws TooMuchError where reading takes too much */
  sumUp(text: string, who: WhoWaits): Promise<Summary>;
  /** What a take says of itself; null where the file is no take. @throws TooMuchError where reading takes too much */
  readTake(file: Uint8Array, who: WhoWaits): Promise<TakeFacts | null>;
  close(): Promise<void>;
}

/**
 * UTF-16 code units of a lesson, and bytes of the facts of a take, that are read at once: whatever stands in so few takes less than a tenth of a second, which
 * is less than it takes to start a thread.
 */
const SHORT = 16_000;

const DEADLINE_MS = 40_000;
const MEMORY_BYTES = 400 * 2 ** 20;

/** A reader; its thread starts with the first file. */
export function createImportMaker(): ImportMaker {
  const thread = createThread<ImportOrder, ImportAnswer>(threadFile(import.meta.url, 'import-worker'), {
    memoryBytes: MEMORY_BYTES,
  });
  const ask = async (order: ImportOrder, who: WhoWaits) => {
    const answer = await thread.ask(order, { ...who, deadlineMs: DEADLINE_MS, endsWhenLeft: true });
    if (answer.kind === 'broken') throw new Error(answer.message);
    return answer;
  };
  return {
    read: async (bytes, file, who) => {
      const answer = await ask({ bytes, file }, who);
      if (answer.kind === 'summary' || answer.kind === 'take')
        throw new RangeError(`Internal error: a ${answer.kind} where a file was to be read`);
      return answer;
    },
    sumUp: async (text, who) => {
      if (text.length <= SHORT) return summarise(text);
      const answer = await ask({ text }, who);
      if (answer.kind !== 'summary') throw new RangeError(`Internal error: ${answer.kind}, no summary`);
      return answer.summary;
    },
    readTake: async (file, who) => {
      if (bytesOfFacts(file) <= SHORT) return readTakeFacts(file);
      const answer = await ask({ take: file }, who);
      if (answer.kind !== 'take') throw new RangeError(`Internal error: ${answer.kind}, no take`);
      return answer.facts;
    },
    close: thread.close,
  };
}
