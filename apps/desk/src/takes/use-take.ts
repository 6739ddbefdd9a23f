/** A student's recording on its way to its report: how far it is, and a way to leave off. */
import { useEffect, useRef, useState } from 'react';
import { readPlayed } from '../dictation/sound-file.ts';
import TakeWorker from './take.worker.ts?worker';
import type { HeardTake, HearOrder, HearReport, NotHeard } from './take-messages.ts';

/** How far it is. */
export type Hearing =
  | { readonly at: 'ready' | 'reading' | NotHeard }
  | { readonly at: 'listening'; readonly share: number }
  | { readonly at: 'heard'; readonly heard: HeardTake };

/** The recording, and what can be done. */
export interface TakeHearing {
  readonly hearing: Hearing;
  readonly hear: (file: File, order: Omit<HearOrder, 'played'>) => Promise<void>;
  readonly cancel: () => void;
}

/** Hears recordings, one at a time; what is being heard is left off when the page goes. */
export function useTake(): TakeHearing {
  const worker = useRef<Worker | null>(null);
  const turn = useRef(0);
  const [hearing, show] = useState<Hearing>({ at: 'ready' });
  const end = (next: Hearing) => {
    turn.current += 1;
    worker.current?.terminate();
    worker.current = null;
    show(next);
  };
  useEffect(() => () => worker.current?.terminate(), []);
  return {
    hearing,
    cancel: () => end({ at: 'ready' }),
    hear: async (file, order) => {
      end({ at: 'reading' });
      const mine = turn.current;
      const played = await readPlayed(file);
      if (turn.current !== mine) return;
      if (!played) {
        end({ at: 'failed' });
        return;
      }
      const made = new TakeWorker();
      made.onerror = () => end({ at: 'failed' });
      made.onmessage = ({ data }: MessageEvent<HearReport>) => {
        if (data.kind === 'listening') show({ at: 'listening', share: data.share });
        else end(typeof data.heard === 'string' ? { at: data.heard } : { at: 'heard', heard: data.heard });
      };
      made.postMessage({ ...order, played } satisfies HearOrder);
      worker.current = made;
    },
  };
}
