/**
 * The service worker of a pack: keeps every file of one version together and answers from them, so that the page
 * opens without a network and never mixes two versions.
 *
 * A pack writes its id, version and files with their sums in front of this code; any change of the pack is thus a new
 * worker. A new version is fetched whole, and each file checked by its sum, before any of it is kept: a host may answer
 * with a page of its own, or have half of an upload. It waits until the page asks for it or is closed, and then the old
 * one is forgotten. The old worker stays in charge until its pages are closed and answers from the version that has taken
 * its place: a browser may take minutes to exchange workers under open pages. What a student has practised lies in a
 * database of the browser, which no version touches.
 *
 * Source: W3C Service Workers; RFC 9110, 14 and 15.3.7, for parts of files, which a cache does not keep.
 */

import type { ToPage, ToWorker } from './messages.ts';

/** What a pack says of itself. */
interface PackOfWorker {
  readonly id: string;
  readonly version: string;
  /** The beginning of each file's SHA-256, in hexadecimal digits, by its path. */
  readonly files: Readonly<Record<string, string>>;
}

type Page = Pick<Worker, 'postMessage'>;

/** The part of a service worker's scope that is used here. */
interface WorkerScope {
  readonly SHEDBOOK_PACK: PackOfWorker;
  readonly registration: { readonly scope: string };
  readonly clients: {
    claim(): Promise<void>;
    matchAll(which: { readonly includeUncontrolled: boolean }): Promise<readonly Page[]>;
  };
  addEventListener(kind: 'install' | 'activate', listener: (event: LifeEvent) => void): void;
  addEventListener(kind: 'message', listener: (event: ToldEvent) => void): void;
  addEventListener(kind: 'fetch', listener: (event: AskEvent) => void): void;
}

interface LifeEvent {
  waitUntil(work: Promise<unknown>): void;
}

interface ToldEvent extends LifeEvent {
  readonly data: ToWorker;
  readonly source: Page | null;
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

async function sumOf(bytes: ArrayBuffer, length: number): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const digits = Array.from(digest, (byte) => byte.toString(16).padStart(2, '0'));
  return digits.join('').slice(0, length);
}

/** A file as the pack has it. @throws Error where the host answers with anything else */
async function fetchChecked(path: string, sum: string): Promise<Response> {
  const answer = await fetch(new URL(path, scope), { cache: 'reload' });
  const bytes = await answer.arrayBuffer();
  if (!answer.ok || (await sumOf(bytes, sum.length)) !== sum)
    throw new Error(`${path} is not of this version`);
  return new Response(bytes, { headers: { 'content-type': answer.headers.get('content-type') ?? '' } });
}

async function keepAll(): Promise<void> {
  const fetched = await Promise.all(
    Object.entries(files).map(async ([path, sum]) => [path, await fetchChecked(path, sum)] as const),
  );
  const cache = await caches.open(CACHE);
  await Promise.all(fetched.map(([path, answer]) => cache.put(new URL(path, scope), answer)));
}

/** Every other version that is kept, in the order in which they came. */
async function otherVersions(): Promise<readonly string[]> {
  return (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
}

async function forgetOthers(): Promise<void> {
  await Promise.all((await otherVersions()).map((name) => caches.delete(name)));
}

function tell(page: Page | null, what: ToPage): void {
  page?.postMessage(what);
}

/** One that has taken over may still wait for the browser, and is shown already. */
async function sayWhetherWaiting(page: Page | null): Promise<void> {
  if ((await otherVersions()).length > 0) tell(page, 'waits');
}

/** Takes the place of the old version, and lets every page open anew. */
async function takeOver(): Promise<void> {
  await forgetOthers();
  for (const page of await worker.clients.matchAll({ includeUncontrolled: true })) tell(page, 'taken over');
}

/** The address of what is asked for: the folder itself is its start page. */
function addressOf(request: Request): string {
  const { href, origin, pathname } = new URL(request.url);
  return href.split(/[?#]/)[0] === scope ? new URL('index.html', scope).href : origin + pathname;
}

/** First and last byte that a request asks for; null where it asks for all, or in several parts. */
function rangeOf(request: Request, size: number): readonly [number, number] | null {
  const [, from = '', to = ''] = /^bytes=(\d*)-(\d*)$/.exec(request.headers.get('range') ?? '') ?? [];
  if (from === '' && to === '') return null;
  if (from === '') return [Math.max(0, size - Number(to)), size - 1];
  return [Number(from), to === '' ? size - 1 : Math.min(Number(to), size - 1)];
}

/** The part of a kept file that is asked for: some browsers play sound and video by parts alone. */
async function partOf(request: Request, whole: Response): Promise<Response> {
  const content = await whole.clone().blob();
  const range = rangeOf(request, content.size);
  if (!range) return whole;
  const [from, to] = range;
  if (from > to)
    return new Response(null, { status: 416, headers: { 'content-range': `bytes */${content.size}` } });
  const headers = {
    'content-type': whole.headers.get('content-type') ?? '',
    'content-range': `bytes ${from}-${to}/${content.size}`,
    'accept-ranges': 'bytes',
  };
  return new Response(content.slice(from, to + 1), { status: 206, headers });
}

/** The version that pages are shown: this worker's own, or the one that has taken its place and forgotten it. */
async function shownVersion(): Promise<string> {
  return (await caches.has(CACHE)) ? CACHE : ((await otherVersions())[0] ?? CACHE);
}

/** Asks without opening the cache, which would make it anew where it has just been forgotten. */
async function answer(request: Request): Promise<Response> {
  const kept = await caches.match(addressOf(request), { cacheName: await shownVersion() });
  if (!kept) return fetch(request);
  return request.headers.has('range') ? partOf(request, kept) : kept;
}

worker.addEventListener('install', (event) => event.waitUntil(keepAll()));
worker.addEventListener('activate', (event) => event.waitUntil(forgetOthers()));
worker.addEventListener('message', (event) => {
  switch (event.data) {
    case 'take over':
      return event.waitUntil(takeOver());
    case 'take charge':
      // Not while it becomes active: a browser may hold back whatever a page asks for until then, the sound thread too.
      return void worker.clients.claim();
    case 'say whether you wait':
      return event.waitUntil(sayWhetherWaiting(event.source));
    default:
      return event.data satisfies never;
  }
});
worker.addEventListener('fetch', (event) => {
  if (event.request.method === 'GET' && event.request.url.startsWith(scope)) {
    event.respondWith(answer(event.request));
  }
});
