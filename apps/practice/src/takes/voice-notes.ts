/**
 * What the teacher said about takes, kept on the device so that it can be heard without a network.
 *
 * Conventions: kept by the address that it came from with the time when it was spoken, so that a new note takes the
 * place of an old one. A browser that keeps nothing (a page that is not safe) plays it from the network.
 */
import type { SentTake, SpokenNote } from '@shedbook/routes';
import { linkFolder } from '../week/read-week.ts';

const CACHE = 'shedbook voice notes';

/** Where a note of a take is. */
export function voiceAddress({ facts }: SentTake, { bar, spokenAt }: SpokenNote): string {
  const address = new URL(`../takes/${encodeURIComponent(facts.id)}/voice`, window.location.href);
  address.searchParams.set('at', spokenAt);
  if (bar !== null) address.searchParams.set('bar', String(bar));
  return address.href;
}

/** The notes of a take; what was last seen may come from a server that knew none. */
export function notesOf({ notes = [] }: Partial<SentTake>): readonly SpokenNote[] {
  return notes;
}

async function cacheOfNotes(): Promise<Cache | null> {
  return 'caches' in window ? caches.open(CACHE).catch(() => null) : null;
}

/** Keeps the notes of these takes, and lets go of all others of this link. */
export async function keepVoices(takes: readonly SentTake[]): Promise<void> {
  const cache = await cacheOfNotes();
  if (!cache) return;
  const wanted = new Set(takes.flatMap((take) => notesOf(take).map((note) => voiceAddress(take, note))));
  for (const { url } of await cache.keys()) {
    if (url.includes(linkFolder()) && !wanted.has(url)) await cache.delete(url);
    wanted.delete(url);
  }
  for (const address of wanted) await cache.add(address).catch(() => undefined);
}

/** A note of a take as it is kept; null where it is not. */
export async function keptVoice(take: SentTake, note: SpokenNote): Promise<Blob | null> {
  const cache = await cacheOfNotes();
  const found = await cache?.match(voiceAddress(take, note));
  return found ? found.blob() : null;
}
