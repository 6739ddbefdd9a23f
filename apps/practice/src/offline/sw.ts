/**
 * The service worker of a pack: keeps every file of one version together and answers from them, so that the page
 * opens without a network and never mixes two versions.
 *
 * A pack writes its id, version and files in front of this code; any change of the pack is thus a new worker. A new
 * version is fetched whole before it is used, waits until the page asks for it or is closed, and then the old one is
 * forgotten. What a student has practised lies in a database of the browser, which no version touches.
 *
 * Source: W3C Service Workers; RFC 9110 for partial content, which a cache does not keep.
 */

/** What a pack says of itself. */
interface PackOfWorker {
  readonly id: string;
  readonly version: string;
  readonly files: readonly string[];
}

/** The part of a service worker's scope that is used here. */
interface WorkerScope {
  readonly SHEDBOOK_PACK: PackOfWorker;
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(kind: 'install' | 'activate', listener: (event: LifeEvent) => void): void;
  addEventListener(kind: 'message', listener: (event: { readonly data: unknown }) => void): void;
  addEventListener(kind: 'fetch', listener: (event: AskEvent) => void): void;
}

interface LifeEvent {
  waitUntil(work: Promise<unknown>): void;
}

interface AskEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

const worker = globalThis as unknown as WorkerScope;
const { version, files } = worker.SHEDBOOK_PACK;
const { scope } = worker.registration;
const PREFIX = `shedbook ${scope} `;
const CACHE = PREFIX + version;

async function keepAll(): Promise<void> {
  const cache = await caches.open(CACHE);
  const requests = files.map((path) => new Request(new URL(path, scope), { cache: 'reload' }));
  await cache.addAll(requests);
}

async function forgetOthers(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

/** The address of what is asked for: the folder itself is its start page. */
function addressOf(request: Request): string {
  const url = new URL(request.url);
  return request.mode === 'navigate' ? new URL('index.html', scope).href : url.origin + url.pathname;
}

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(addressOf(request))) ?? fetch(request);
}

worker.addEventListener('install', (event) => event.waitUntil(keepAll()));
worker.addEventListener('activate', (event) => event.waitUntil(forgetOthers()));
worker.addEventListener('message', ({ data }) => {
  if (data === 'take over') void worker.skipWaiting();
  // Not while it becomes active: a browser may hold back whatever a page asks for until then, the sound thread too.
  if (data === 'take charge') void worker.clients.claim();
});
worker.addEventListener('fetch', (event) => {
  if (event.request.method === 'GET' && event.request.url.startsWith(scope)) {
    event.respondWith(answer(event.request));
  }
});

export {};
