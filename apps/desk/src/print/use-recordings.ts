/** Recordings on their way: how far they are, and a way to leave off. */
import type { LanguageTag } from '@shedbook/words';
import { useEffect, useRef, useState } from 'react';
import { offer } from '../shared/offer.ts';
import RecordingWorker from './recording.worker.ts?worker';
import type { RecordOrder, RecordReport } from './recording-messages.ts';

/** How far they are. */
export type Making =
  | { readonly at: 'ready' | 'failed' | 'cancelled' }
  | { readonly at: 'made'; readonly name: string }
  | { readonly at: 'making'; readonly number: number; readonly total: number };

/** Recordings, and what can be done. */
export interface Recordings {
  readonly making: Making;
  /** Makes them, counted aloud in a language or not, and hands the file to the person at the screen. */
  readonly make: (order: Omit<RecordOrder, 'spoken'>, countedIn: LanguageTag | null) => void;
  readonly cancel: () => void;
}

/** What is counted in a language; null where nothing is. */
async function spokenIn(language: LanguageTag | null): Promise<RecordOrder['spoken']> {
  if (language === null) return null;
  const { loadSpoken } = await import('@shedbook/stand/spoken-words');
  return { language, samples: await loadSpoken(language) };
}

/** Makes recordings, one order at a time; what is being made is left off when the page goes. */
export function useRecordings(): Recordings {
  const worker = useRef<Worker | null>(null);
  const [making, show] = useState<Making>({ at: 'ready' });
  const leaveOff = () => {
    worker.current?.terminate();
    worker.current = null;
  };
  const end = (next: Making) => {
    leaveOff();
    show(next);
  };
  useEffect(() => () => worker.current?.terminate(), []);
  return {
    making,
    make: (order, countedIn) => {
      if (making.at === 'making') leaveOff();
      show({ at: 'making', number: 0, total: order.exercises.length });
      // Who made some has the kit at hand, which takes seconds to make.
      const made = worker.current ?? new RecordingWorker();
      made.onerror = () => end({ at: 'failed' });
      made.onmessage = ({ data }: MessageEvent<RecordReport>) => {
        if (data.kind === 'making') show({ at: 'making', number: data.number, total: data.total });
        else {
          offer(new Blob([data.content]), data.name);
          show({ at: 'made', name: data.name });
        }
      };
      worker.current = made;
      spokenIn(countedIn).then(
        (spoken) => {
          if (worker.current === made) made.postMessage({ ...order, spoken } satisfies RecordOrder);
        },
        () => end({ at: 'failed' }),
      );
    },
    cancel: () => end({ at: 'cancelled' }),
  };
}
