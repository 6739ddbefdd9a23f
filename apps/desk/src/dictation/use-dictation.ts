/** A take on its way to the page: recorded or dropped, written down, looked through. */
import type { Lesson } from '@shedbook/core';
import type { RefusalFact, Transcript } from '@shedbook/listen';
import { askWorker } from '@shedbook/stand';
import { useEffect, useRef, useState } from 'react';
import DictationWorker from './dictation.worker.ts?worker';
import type { DictationAnswer, DictationOrder, Played } from './messages.ts';
import { type Recorder, record, type Source } from './recorder.ts';
import { readPlayed } from './sound-file.ts';

/** How far a take is. */
export type DictationState =
  | { readonly at: 'ready' }
  | { readonly at: 'recording'; readonly source: Source }
  | { readonly at: 'writing' }
  /** The device is not there or not allowed, or the file is no take. */
  | { readonly at: 'failed'; readonly why: Source | 'file' }
  | { readonly at: 'refused'; readonly refusal: RefusalFact }
  | { readonly at: 'written'; readonly heard: Transcript };

/** A take, and what can be done. */
export interface Dictation {
  readonly state: DictationState;
  readonly record: (source: Source) => Promise<void>;
  readonly stop: () => Promise<void>;
  readonly read: (file: File) => Promise<void>;
}

function writeDown(order: DictationOrder, signal: AbortSignal): Promise<DictationAnswer> {
  return askWorker<DictationAnswer>(new DictationWorker(), order, { signal }).catch(() => null);
}

function stateOf(answer: DictationAnswer): DictationState {
  if (!answer) return { at: 'failed', why: 'file' };
  return answer.transcript
    ? { at: 'written', heard: answer.transcript }
    : { at: 'refused', refusal: answer.refusal };
}

/** Writes takes down, each until it is written or the form is left, in the meter and feel of a lesson. */
export function useDictation({ meter, feel }: Pick<Lesson, 'meter' | 'feel'>): Dictation {
  const [state, show] = useState<DictationState>({ at: 'ready' });
  const recorder = useRef<Recorder | null>(null);
  const writing = useRef<AbortController | null>(null);
  useEffect(() => () => writing.current?.abort(), []);
  const write = async (taking: Promise<Played | null>) => {
    show({ at: 'writing' });
    const asked = new AbortController();
    writing.current = asked;
    const played = await taking;
    show(stateOf(played && (await writeDown({ played, meter, feel }, asked.signal))));
  };
  return {
    state,
    record: async (source) => {
      try {
        recorder.current = await record(source);
        show({ at: 'recording', source });
      } catch {
        show({ at: 'failed', why: source });
      }
    },
    stop: async () => {
      const going = recorder.current;
      recorder.current = null;
      if (going) await write(going.stop());
    },
    read: (file) => write(readPlayed(file)),
  };
}
