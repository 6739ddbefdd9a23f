/** A line that says: there is a newer version of the sheet. */
import { NoticeLine } from '@shedbook/stand';
import { useSyncExternalStore } from 'react';
import { usePracticeWords } from '../page/words.tsx';
import { NEWER_EVENT, newerWaits, takeNewer } from './register.ts';

function subscribe(listener: () => void): () => void {
  window.addEventListener(NEWER_EVENT, listener);
  return () => window.removeEventListener(NEWER_EVENT, listener);
}

/** The line, where there is one. */
export function NewerVersion() {
  const words = usePracticeWords();
  const waits = useSyncExternalStore(subscribe, newerWaits);
  return <NoticeLine text={waits ? words.newer : null} action={{ label: words.takeNewer, run: takeNewer }} />;
}
