/** Word from the server that something of a student changed: one stream, as long as anybody on the page listens. */
import { addressOf, ROUTES } from '@shedbook/routes';
import { useEffect } from 'react';

const listeners = new Set<() => void>();
let source: EventSource | null = null;

function tell(): void {
  for (const listener of listeners) listener();
}

function listen(listener: () => void): () => void {
  listeners.add(listener);
  if (!source) {
    // The browser comes back by itself where the stream breaks off.
    source = new EventSource(addressOf(ROUTES.listenToChanges, {}));
    source.onmessage = tell;
  }
  return () => {
    listeners.delete(listener);
    if (listeners.size > 0) return;
    source?.close();
    source = null;
  };
}

/** Looks again whenever something changed. @param look the same function each time */
export function useChanges(look: () => unknown): void {
  useEffect(() => listen(() => void look()), [look]);
}
