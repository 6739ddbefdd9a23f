/** What the roster's practice says of the weights of difficulty; looked up when a person asks, and never by itself. */
import type { WeightFit } from '@shedbook/coach';
import { useSay as useNotice } from '@shedbook/stand';
import { useEffect, useRef, useState } from 'react';
import { wordsFor } from '../document/error-words.ts';
import { readEveryLog } from '../students/every-log.ts';
import { useWords } from '../words/words.tsx';
import WeightsWorker from './weights.worker.ts?worker';
import type { WeightsAnswer, WeightsOrder } from './weights-messages.ts';

/** A fit, and asking for it. */
export interface WeightFitting {
  /** Null before it was asked for, and when it was put away. */
  readonly fit: WeightFit | null;
  readonly isLooking: boolean;
  readonly look: (lesson: Omit<WeightsOrder, 'logs'>) => Promise<void>;
  readonly putAway: () => void;
}

function fitted(worker: Worker, order: WeightsOrder): Promise<WeightsAnswer> {
  return new Promise((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<WeightsAnswer>) => resolve(data);
    worker.onerror = ({ message }) => reject(new Error(message));
    worker.postMessage(order);
  });
}

/** Looks at the roster's practice when asked. */
export function useWeightFit(): WeightFitting {
  const notice = useNotice();
  const words = useWords();
  const worker = useRef<Worker | null>(null);
  const [fit, setFit] = useState<WeightFit | null>(null);
  const [isLooking, setIsLooking] = useState(false);
  const stop = () => {
    worker.current?.terminate();
    worker.current = null;
  };
  useEffect(() => () => worker.current?.terminate(), []);
  const look: WeightFitting['look'] = async (lesson) => {
    setIsLooking(true);
    try {
      const logs = await readEveryLog();
      stop();
      worker.current = new WeightsWorker();
      setFit(await fitted(worker.current, { ...lesson, logs }));
    } catch (error) {
      notice(wordsFor(error, words));
    } finally {
      stop();
      setIsLooking(false);
    }
  };
  return { fit, isLooking, look, putAway: () => setFit(null) };
}
