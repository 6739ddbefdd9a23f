/** Going from one address of the desk to another. */
import { useSyncExternalStore } from 'react';
import { pathOf, type Route } from './address.ts';

const MOVED = 'shedbook:moved';

/** Goes somewhere; back returns from it. */
export function go(route: Route): void {
  window.history.pushState(null, '', pathOf(route));
  window.dispatchEvent(new Event(MOVED));
}

function subscribe(listener: () => void): () => void {
  window.addEventListener('popstate', listener);
  window.addEventListener(MOVED, listener);
  return () => {
    window.removeEventListener('popstate', listener);
    window.removeEventListener(MOVED, listener);
  };
}

/** The path in the address bar; changes as somebody moves. */
export function usePath(): string {
  return useSyncExternalStore(subscribe, () => window.location.pathname);
}
