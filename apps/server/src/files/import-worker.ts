/** The thread that reads what comes from elsewhere: files of other programs, and lessons that are long. */
import { parentPort } from 'node:worker_threads';
import { type Summary, summarise } from '../store/summary.ts';
import { type ImportOutcome, importLesson } from './import-lesson.ts';

/** A file and its name, or the text of a lesson that is summed up. */
export type ImportOrder = { readonly bytes: Uint8Array; readonly file: string } | { readonly text: string };

/** What became of it. */
export type ImportAnswer =
  | ImportOutcome
  | { readonly kind: 'summary'; readonly summary: Summary }
  | { readonly kind: 'broken'; readonly message: string };

function answer(order: ImportOrder): ImportAnswer {
  try {
    if ('text' in order) return { kind: 'summary', summary: summarise(order.text) };
    return importLesson(order.bytes, order.file);
  } catch (error) {
    return { kind: 'broken', message: (error as Error).stack ?? String(error) };
  }
}

parentPort?.on('message', (order: ImportOrder) => parentPort?.postMessage(answer(order)));
