/**
 * How a subdivision is counted aloud.
 * Source: common practice: eighths "1 &", triplets "1 trip let", sixteenths "1 e & a"; the six-slot syllables
 * are ours (no one set is common).
 */
import type { Subdivision } from './cell.ts';

const SYLLABLES = {
  1: [],
  2: ['&'],
  3: ['trip', 'let'],
  4: ['e', '&', 'a'],
  6: ['ta', 'trip', 'ta', 'let', 'ta'],
} as const satisfies Readonly<Record<Subdivision, readonly string[]>>;

/** What is counted inside a beat, by its English name; other languages count with their own. */
export type Syllable = (typeof SYLLABLES)[Subdivision][number];

/**
 * The syllable of a slot (from 0) among `slots` of a beat; null on the beat itself, which is counted by its number.
 * @example countSyllable(2, 3) // 'let'
 */
export function countSyllable(slot: number, slots: Subdivision): Syllable | null {
  const syllables: readonly Syllable[] = SYLLABLES[slots];
  return syllables[slot - 1] ?? null;
}
