/**
 * What the teacher said about takes, kept on the device so that it can be heard without a network.
 *
 * Conventions: kept by the address that it came from with the time when it was spoken, so that a new note takes the
 * place of an old one. A browser that keeps nothing (a page that is not safe) plays it from the network.
 */
import type { SentTake } from '@shedbook/routes';
import { linkFolder } from '../week/read-week.ts';

const CACHE = 'shedbook voice notes';

/** Where the note of a take is. */
export function voiceAddress({ facts, voiceAt }: SentTake): string {
  const address = new URL(`../takes/${encodeURIComponent(facts.id)}/voice`, window.location.href);
  address.searchParams.set('at', voiceAt ?? '');
  return address.href;
}

async function cacheOfNotes(): Promise<Cache | null> {
  return 'caches' in window ? caches.open(CACHE).catch(() => null) : null;
}

/** Keeps the notes of these takes, and lets go of all others of this link. */
export async function keepVoices(takes: readonly SentTake[]): Promise<void> {
  const cache = await cacheOfNotes();
  if (!cache) return;
  const wanted = new Set(takes.filter(({ voiceAt }) => Boolean(voiceAt)).map(voiceAddress));
  for (const { url } of await cache.keys()) {
    if (url.includes(linkFolder()) && !wanted.has(url)) await cache.delete(url);
    wanted.delete(url);
  }
  for (const address of wanted) await cache.add(address).catch(() => undefined);
}

/** The note of a take as it is kept; null where it is not. */
export async function keptVoice(take: SentTake): Promise<Blob | null> {
  const cache = await cacheOfNotes();
  const found = await cache?.match(voiceAddress(take));
  return found ? found.blob() : null;
}
