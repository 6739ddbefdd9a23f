/** The thread that reads files of other programs. */
import { parentPort } from 'node:worker_threads';
import { type ImportOutcome, importLesson } from './import-lesson.ts';

/** A file and its name. */
export interface ImportOrder {
  readonly bytes: Uint8Array;
  readonly file: string;
}

/** What became of it. */
export type ImportAnswer = ImportOutcome | { readonly kind: 'broken'; readonly message: string };

function answer({ bytes, file }: ImportOrder): ImportAnswer {
  try {
    return importLesson(bytes, file);
  } catch (error) {
    return { kind: 'broken', message: (error as Error).stack ?? String(error) };
  }
}

parentPort?.on('message', (order: ImportOrder) => parentPort?.postMessage(answer(order)));
