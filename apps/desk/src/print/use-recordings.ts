/** Recordings on their way: how far they are, and a way to leave off. */
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
  /** Makes them, and hands the file to the person at the screen. */
  readonly make: (order: RecordOrder) => void;
  readonly cancel: () => void;
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
    make: (order) => {
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
      made.postMessage(order);
      worker.current = made;
    },
    cancel: () => end({ at: 'cancelled' }),
  };
}
