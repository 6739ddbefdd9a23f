/** Making sheets beside the server, so that engraving never holds up the keeping of lessons. */
import { Worker } from 'node:worker_threads';
import type { LanguageTag } from '@shedbook/words';
import type { SheetAnswer, SheetOrder } from './sheet-messages.ts';

/** What a sheet came to; null where the text is no lesson. */
export interface SheetMaker {
  /** Gets ready for a sheet that may be wanted soon. */
  warm(): void;
  pages(text: string, language: LanguageTag): Promise<readonly string[] | null>;
  pdf(text: string, language: LanguageTag): Promise<Uint8Array | null>;
  /** A take-home pack as a ZIP file; `name` is the lasting name of the lesson. */
  pack(request: Pick<SheetOrder, 'text' | 'name' | 'language' | 'assignments'>): Promise<Uint8Array | null>;
  close(): Promise<void>;
}

/** The thread's compiled file, also when this file runs from its source. */
function workerUrl(): URL {
  const compiled = import.meta.url.endsWith('.js');
  return new URL(compiled ? './sheet-worker.js' : '../../dist/sheet/sheet-worker.js', import.meta.url);
}

type Waiting = (answer: SheetAnswer | Error) => void;

/** A maker; its thread starts with the first sheet. */
export function createSheetMaker(): SheetMaker {
  const waiting = new Map<number, Waiting>();
  let worker: Worker | null = null;
  let orders = 0;

  const fail = (error: Error) => {
    worker = null;
    for (const settle of waiting.values()) settle(error);
    waiting.clear();
  };
  const open = () => {
    const fresh = new Worker(workerUrl(), { execArgv: [] });
    fresh.on('message', (answer: SheetAnswer) => {
      waiting.get(answer.id)?.(answer);
      waiting.delete(answer.id);
    });
    fresh.on('error', fail);
    fresh.unref();
    return fresh;
  };
  const ask = ({
    text,
    want,
    language,
    name = '',
    assignments = [],
  }: Pick<SheetOrder, 'text' | 'want' | 'language'> & Partial<Pick<SheetOrder, 'name' | 'assignments'>>) =>
    new Promise<SheetAnswer>((resolve, reject) => {
      worker ??= open();
      orders += 1;
      waiting.set(orders, (answer) => {
        if (answer instanceof Error) reject(answer);
        else if (answer.kind === 'broken') reject(new Error(answer.message));
        else resolve(answer);
      });
      const order: SheetOrder = { id: orders, text, want, language, name, assignments };
      worker.postMessage(order);
    });
  return {
    warm: () => {
      worker ??= open();
    },
    pages: async (text, language) => {
      const answer = await ask({ text, language, want: 'pages' });
      return answer.kind === 'pages' ? answer.pages : null;
    },
    pdf: async (text, language) => {
      const answer = await ask({ text, language, want: 'pdf' });
      return answer.kind === 'pdf' ? answer.bytes : null;
    },
    pack: async (request) => {
      const answer = await ask({ ...request, want: 'pack' });
      return answer.kind === 'pack' ? answer.bytes : null;
    },
    close: async () => {
      await worker?.terminate();
    },
  };
}
