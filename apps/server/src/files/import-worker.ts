/** The thread that reads what comes from elsewhere: files of other programs, and lessons and takes that are long. */
import { parentPort } from 'node:worker_threads';
import type { TakeFacts } from '@shedbook/routes';
import { type Summary, summarise } from '../store/summary.ts';
import { readTakeFacts } from '../week/read-take.ts';
import { type ImportOutcome, importLesson } from './import-lesson.ts';

/** A file and its name, the text of a lesson that is summed up, or the file of a take. */
export type ImportOrder =
  | { readonly bytes: Uint8Array; readonly file: string }
  | { readonly text: string }
  | { readonly take: Uint8Array };

/** What became of it. */
export type ImportAnswer =
  | ImportOutcome
  | { readonly kind: 'summary'; readonly summary: Summary }
  | { readonly kind: 'take'; readonly facts: TakeFacts | null }
  | { readonly kind: 'broken'; readonly message: string };

function answer(order: ImportOrder): ImportAnswer {
  try {
    if ('text' in order) return { kind: 'summary', summary: summarise(order.text) };
    if ('take' in order) return { kind: 'take', facts: readTakeFacts(order.take) };
    return importLesson(order.bytes, order.file);
  } catch (error) {
    return { kind: 'broken', message: (error as Error).stack ?? String(error) };
  }
}

parentPort?.on('message', (order: ImportOrder) => parentPort?.postMessage(answer(order)));
