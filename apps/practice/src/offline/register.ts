/** Keeping the page for use without a network, where the browser can. Source: W3C Service Workers. */

import { lastWeek, linkFolder } from '../week/read-week.ts';
import type { ToLinkWorker, ToPage, ToWorker } from './messages.ts';

/** Name of the event on `window` that says: a newer version waits. */
export const NEWER_EVENT = 'shedbook:newer';

let waiting: ServiceWorker | null = null;

function tell(worker: ServiceWorker | null, what: ToWorker): void {
  worker?.postMessage(what);
}

/** Asks a worker whether its version waits: one that has taken over may still wait itself, and is shown already. */
function askWhetherWaiting(worker: ServiceWorker | null): void {
  if (navigator.serviceWorker.controller) tell(worker, 'say whether you wait');
}

/** Whether a newer version waits to be used. */
export function newerWaits(): boolean {
  return waiting !== null;
}

/** Uses the version that waits: the page is opened anew with it. */
export function takeNewer(): void {
  tell(waiting, 'take over');
}

/**
 * Listens to workers. The page is opened anew with a version that has taken over, whichever page asked for it: two pages
 * of the student's never show two versions.
 */
function listenToWorkers(): void {
  navigator.serviceWorker.addEventListener('message', ({ data, source }: MessageEvent<ToPage>) => {
    if (data === 'taken over') window.location.reload();
    if (data !== 'waits' || !(source instanceof ServiceWorker)) return;
    waiting = source;
    window.dispatchEvent(new Event(NEWER_EVENT));
  });
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

/** The worker of a registration, once it is active. */
function whenActive({ active, waiting, installing }: ServiceWorkerRegistration): Promise<ServiceWorker> {
  return new Promise((resolve) => {
    const worker = active ?? waiting ?? installing;
    const look = () => worker?.state === 'activated' && resolve(worker);
    worker?.addEventListener('statechange', look);
    look();
  });
}

/**
 * Lets a first visit be answered by the page's own worker too, once it is active: the network may go before the next one. A
 * page may be in charge of the worker of its private link until then.
 */
async function takeCharge(registration: ServiceWorkerRegistration): Promise<void> {
  const active = await whenActive(registration);
  if (navigator.serviceWorker.controller?.scriptURL !== active.scriptURL) tell(active, 'take charge');
}

/** Registers the worker beside the page. A page that is not from a safe place goes without. */
export async function registerWorker(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  await atRest();
  listenToWorkers();
  try {
    const registration = await navigator.serviceWorker.register('sw.js', { updateViaCache: 'none' });
    askWhetherWaiting(registration.waiting);
    void takeCharge(registration);
    registration.addEventListener('updatefound', () => {
      const worker = registration.installing;
      worker?.addEventListener('statechange', () => {
        if (worker.state === 'installed') askWhetherWaiting(worker);
      });
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

/** Lets the private link that opened the page open it without a network, too. */
export async function keepLink(): Promise<void> {
  const week = lastWeek();
  if (!week || !('serviceWorker' in navigator)) return;
  try {
    const scope = linkFolder();
    const registration = await navigator.serviceWorker.register(`${scope}sw.js`, {
      scope,
      updateViaCache: 'none',
    });
    const told: ToLinkWorker = { lessons: week.lessons.map(({ id }) => id) };
    (await whenActive(registration)).postMessage(told);
  } catch {
    // The link was taken back, or the host refuses workers: the lesson's own folder opens what it keeps.
  }
}
