/**
 * Whether what a student does is being kept: known at once where a browser refuses, is full, or was cleared.
 *
 * Source: W3C Indexed Database API 3.0 (QuotaExceededError); WHATWG Storage, persistent buckets.
 */
import { useSyncExternalStore } from 'react';

/** `refused`: the browser keeps nothing; `full`: it has no room. */
export type Keeping = 'kept' | 'refused' | 'full';

let now: Keeping = 'kept';
const listeners = new Set<() => void>();

function show(next: Keeping): void {
  if (next === now) return;
  now = next;
  for (const listener of listeners) listener();
}

/** Something was written. */
export function sayKept(): void {
  show('kept');
}

/** Something could not be written or read. */
export function sayNotKept(error: unknown): void {
  const isFull = error instanceof DOMException && error.name === 'QuotaExceededError';
  show(isFull ? 'full' : 'refused');
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Whether things are kept, as it changes. */
export function useKeeping(): Keeping {
  return useSyncExternalStore(subscribe, () => now);
}

let asked: Promise<boolean> | null = null;

/** Asks the browser, once, not to clear by itself what was practised. @returns whether it promised */
export function askToPersist(): Promise<boolean> {
  asked ??= (async () => {
    const { storage } = navigator;
    if (await storage?.persisted?.()) return true;
    return (await storage?.persist?.()) ?? false;
  })().catch(() => false);
  return asked;
}
