/** Keeping the page for use without a network, where the browser can. Source: W3C Service Workers. */

/** Name of the event on `window` that says: a newer version waits. */
export const NEWER_EVENT = 'shedbook:newer';

let waiting: ServiceWorker | null = null;

function announce(worker: ServiceWorker | null): void {
  if (!worker || !navigator.serviceWorker.controller) return;
  waiting = worker;
  window.dispatchEvent(new Event(NEWER_EVENT));
}

/** Whether a newer version waits to be used. */
export function newerWaits(): boolean {
  return waiting !== null;
}

/** Uses the version that waits: the page is opened anew with it. */
export function takeNewer(): void {
  waiting?.postMessage('take over');
}

/**
 * Opens the page anew with the version that takes over, whichever page asked for it: two pages of the student's never
 * show two versions. What a first visit is given is the version that it has.
 */
function followNewer(): void {
  const { serviceWorker } = navigator;
  if (!serviceWorker.controller) return;
  serviceWorker.addEventListener('controllerchange', () => window.location.reload(), { once: true });
}

/** Milliseconds after the page has come to rest: what the worker fetches ahead is not to hold up what is wanted now. */
const QUIET_MS = 800;

function atRest(): Promise<void> {
  return new Promise((resolve) => {
    const rest = () => setTimeout(resolve, QUIET_MS);
    if (document.readyState === 'complete') rest();
    else window.addEventListener('load', rest, { once: true });
  });
}

/** Lets a first visit be answered by the worker too, once it is active: the network may go before the next one. */
async function takeCharge(): Promise<void> {
  const { active } = await navigator.serviceWorker.ready;
  if (!active || navigator.serviceWorker.controller) return;
  const ask = () => active.postMessage('take charge');
  if (active.state === 'activated') ask();
  else active.addEventListener('statechange', () => active.state === 'activated' && ask());
}

/** Registers the worker beside the page. A page that is not from a safe place goes without. */
export async function registerWorker(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  await atRest();
  followNewer();
  try {
    const registration = await navigator.serviceWorker.register('sw.js', { updateViaCache: 'none' });
    announce(registration.waiting);
    void takeCharge();
    registration.addEventListener('updatefound', () => {
      const worker = registration.installing;
      worker?.addEventListener('statechange', () => worker.state === 'installed' && announce(worker));
    });
  } catch {
    // Private windows and some hosts refuse workers: the page works while there is a network.
  }
}

/** Keeps another page of the student's for use without a network, too. @param folder that it lies in */
export async function keepAlso(folder: string): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  await atRest();
  const options = { scope: folder, updateViaCache: 'none' } as const;
  await navigator.serviceWorker.register(`${folder}sw.js`, options).catch(() => undefined);
}
