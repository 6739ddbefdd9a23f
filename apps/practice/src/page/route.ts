/**
 * Addresses inside the practice page: `#sound` tries the device, `#3` is exercise 3, `#time` the groove alone, `#free` playing freely, anything
 * else the sheet. `#jazz-waltz/3` is exercise 3 of another lesson of the student's.
 */
import { useSyncExternalStore } from 'react';

/** Where a student is. */
export type Place =
  | { readonly at: 'sheet' }
  /** Whether this device sounds and hears. */
  | { readonly at: 'sound' }
  /** On the stand; `exercise` null is time alone. */
  | {
      readonly at: 'stage';
      readonly exercise: number | null;
      readonly isFree?: true;
      /** Lasting name of the lesson; that of the page itself where it is left out. */
      readonly lesson?: string;
    };

/** Playing whatever one likes. */
export const FREE_PLAY: Place = { at: 'stage', exercise: null, isFree: true };

/** The places that have one address, and what it is. */
const HASHES: Readonly<Record<Exclude<Place['at'], 'stage'>, string>> = {
  sheet: '#',
  sound: '#sound',
};
const SCREENS = Object.keys(HASHES) as readonly (keyof typeof HASHES)[];

function readStage(text: string): Place {
  if (text === 'free') return FREE_PLAY;
  if (text === 'time') return { at: 'stage', exercise: null };
  return /^[1-9]\d*$/.test(text) ? { at: 'stage', exercise: Number(text) } : { at: 'sheet' };
}

/** A lesson's name as it was written into an address; null where it is none. */
function readName(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

/** Reads the part of an address after `#`. */
export function readPlace(hash: string): Place {
  const text = hash.replace(/^#/, '');
  const at = SCREENS.find((each) => HASHES[each] === `#${text}`);
  if (at) return { at };
  const slash = text.lastIndexOf('/');
  if (slash < 0) return readStage(text);
  const lesson = readName(text.slice(0, slash));
  const place = readStage(text.slice(slash + 1));
  return lesson && place.at === 'stage' ? { ...place, lesson } : { at: 'sheet' };
}

/** The address of a place. */
export function hrefOf(place: Place): string {
  if (place.at !== 'stage') return HASHES[place.at];
  const { lesson, isFree, exercise } = place;
  const of = lesson === undefined ? '' : `${encodeURIComponent(lesson)}/`;
  if (isFree) return `#${of}free`;
  return `#${of}${exercise ?? 'time'}`;
}

function subscribe(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}

/** Goes somewhere; back returns from it. */
export function goTo(place: Place): void {
  window.location.hash = hrefOf(place);
}

/** Where the student is, as it changes. */
export function usePlace(): Place {
  const hash = useSyncExternalStore(subscribe, () => window.location.hash);
  return readPlace(hash);
}
