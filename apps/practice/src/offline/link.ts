/**
 * The service worker of a private link, so that the link itself opens without a network: it stands in a teacher's message,
 * and that is what a student taps.
 *
 * The link has no page of its own. It leads on to the first lesson that is set, whose own worker keeps it; this one keeps
 * in which order lessons are set, as the desk or the page said it last. It asks the desk first, and takes for its word only
 * what no other host would say: the week of a student, or that nobody has this link. A page that a host answers
 * with instead, whatever its status, counts as no network.
 *
 * Source: W3C Service Workers; WHATWG Fetch, 4.3, a redirect that a worker answers a navigation with is followed.
 */

import type { ToLinkWorker } from './messages.ts';

/** The part of a service worker's scope that is used here. */
interface LinkScope {
  readonly registration: { readonly scope: string; unregister(): Promise<boolean> };
  skipWaiting(): Promise<void>;
  addEventListener(kind: 'install', listener: (event: LifeEvent) => void): void;
  addEventListener(kind: 'message', listener: (event: ToldEvent) => void): void;
  addEventListener(kind: 'fetch', listener: (event: AskEvent) => void): void;
}

interface LifeEvent {
  waitUntil(work: Promise<unknown>): void;
}

interface ToldEvent extends LifeEvent {
  readonly data: ToLinkWorker;
}

interface AskEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

/** Lessons by their ids, in the order in which they are set. */
type Lessons = readonly string[];

/** Milliseconds after which what was said last stands in for what does not come: the page itself asks again. */
const PATIENCE_MS = 2000;

const worker = globalThis as unknown as LinkScope;
const { scope } = worker.registration;
const CACHE = `shedbook link ${scope}`;

/** What a desk answers, as far as it is used here. */
interface Said {
  readonly code?: unknown;
  readonly student?: { readonly id?: unknown };
  readonly lessons?: readonly { readonly id?: unknown }[];
}

/** The lessons of a student's week; null where it is none. */
function lessonsIn({ student, lessons }: Said): Lessons | null {
  if (typeof student?.id !== 'string' || !Array.isArray(lessons)) return null;
  const ids = lessons.map(({ id }) => id);
  return ids.every((id) => typeof id === 'string') ? ids : null;
}

/** What the desk says of the link; null where no desk answers. */
async function askDesk(): Promise<Lessons | 'taken back' | null> {
  try {
    const signal = AbortSignal.timeout(PATIENCE_MS);
    const answer = await fetch(new URL('week.json', scope), { cache: 'no-store', signal });
    const said = (await answer.json()) as Said;
    if (answer.ok) return lessonsIn(said);
    return answer.status === 404 && said.code === 'no-such-link' ? 'taken back' : null;
  } catch {
    return null;
  }
}

async function keep(lessons: Lessons): Promise<void> {
  const cache = await caches.open(CACHE);
  await cache.put(scope, new Response(JSON.stringify(lessons)));
}

async function keptLessons(): Promise<Lessons> {
  const kept = await caches.match(scope, { cacheName: CACHE });
  return kept ? ((await kept.json()) as Lessons) : [];
}

async function forget(): Promise<void> {
  await caches.delete(CACHE);
  await worker.registration.unregister();
}

function folderOf(lesson: string): string {
  return new URL(`${encodeURIComponent(lesson)}/`, scope).href;
}

/** The first lesson that a worker of its own keeps. */
async function firstKept(): Promise<string | undefined> {
  for (const lesson of await keptLessons()) {
    if (await caches.match(`${folderOf(lesson)}index.html`)) return lesson;
  }
  return undefined;
}

async function open(request: Request): Promise<Response> {
  const said = await askDesk();
  if (said === 'taken back') await forget();
  else if (said) await keep(said);
  const lesson = said ? said !== 'taken back' && said[0] : await firstKept();
  return lesson ? Response.redirect(folderOf(lesson)) : fetch(request);
}

/** Whether somebody opens the link itself, and not what lies in it. */
function isLink({ mode, url }: Request): boolean {
  return mode === 'navigate' && url.split(/[?#]/)[0] === scope;
}

// No page stands under the link itself, so none mixes two versions of this worker.
worker.addEventListener('install', (event) => event.waitUntil(worker.skipWaiting()));
worker.addEventListener('message', (event) => event.waitUntil(keep(event.data.lessons)));
worker.addEventListener('fetch', (event) => {
  if (isLink(event.request)) event.respondWith(open(event.request));
});
