/** Which word of a count falls on a click, and where that word lies in its recording. */
import { countSyllable, isSubdivision, type Stroke, type Syllable } from '@shedbook/core';
import { PLACES } from './places.data.ts';

/** A beat by its number, or what is counted inside it. */
export type CountWord = Syllable | `${number}`;

/** A language that the count is spoken in. */
export type SpokenLanguage = keyof typeof PLACES;

/** Samples a second of the recordings of the words. */
export const SPOKEN_RATE_HZ = 16_000;

/** How loud words are beside the click and the kit, as a factor. */
export const SPOKEN_GAIN = 0.5;

/** How quickly a word makes room for the next one, in seconds (time constant). */
export const SPOKEN_FADE_SECONDS = 0.012;

/** Where a word lies in its recording, in seconds. */
export interface SpokenPlace {
  readonly startSeconds: number;
  readonly lastsSeconds: number;
  /** Where it is felt to fall, from its start. */
  readonly feltSeconds: number;
}

/** Where a click falls: its beat and slot, and how many slots the beat has. */
export interface CountedPlace extends Pick<Stroke, 'written'> {
  readonly slots: number;
}

/** The word of a click; null where nothing is counted there. */
export function countWordOf({ written, slots }: CountedPlace): CountWord | null {
  if (written.slot === 1) return `${written.beat}`;
  return isSubdivision(slots) ? countSyllable(written.slot - 1, slots) : null;
}

/** Where a word lies; null where it was not recorded. */
export function spokenPlace(language: SpokenLanguage, word: string): SpokenPlace | null {
  const places: Readonly<Record<string, readonly [number, number, number]>> = PLACES[language];
  const [startSeconds, lastsSeconds, feltSeconds] = places[word] ?? [];
  if (startSeconds === undefined || lastsSeconds === undefined || feltSeconds === undefined) return null;
  return { startSeconds, lastsSeconds, feltSeconds };
}
