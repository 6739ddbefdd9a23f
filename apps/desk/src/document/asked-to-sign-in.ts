/** Whether the server has asked who comes. */
import { useSyncExternalStore } from 'react';

let isAsked = false;
const listeners = new Set<() => void>();

function tell(next: boolean): void {
  if (isAsked === next) return;
  isAsked = next;
  for (const listener of listeners) listener();
}

/** The server asked who comes. */
export function askedToSignIn(): void {
  tell(true);
}

/** Somebody signed in. */
export function signedIn(): void {
  tell(false);
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Whether it asked, and nobody has signed in since. */
export function useAskedToSignIn(): boolean {
  return useSyncExternalStore(subscribe, () => isAsked);
}
