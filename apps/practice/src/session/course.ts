/**
 * The order in which exercises come when practice goes on by itself: today's list where it was taken up, else the
 * sheet's.
 *
 * Conventions: numbers of exercises on the sheet; an exercise may come more than once.
 */
import { useSyncExternalStore } from 'react';

let list: readonly number[] | null = null;
const listeners = new Set<() => void>();

/** Takes up a list, or goes back to the order of the sheet. */
export function takeUpList(numbers: readonly number[] | null): void {
  list = numbers;
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** The list that was taken up, or null. */
export function useList(): readonly number[] | null {
  return useSyncExternalStore(subscribe, () => list);
}
