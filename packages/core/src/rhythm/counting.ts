/**
 * How a subdivision is counted aloud.
 * Source: common practice: eighths "1 &", triplets "1 trip let", sixteenths "1 e & a"; fives and sevens by the
 * syllables of konnakol (from memory); those of six and eight slots are ours (no one set is common).
 */
import type { Subdivision } from './cell.ts';

const SYLLABLES = {
  1: [],
  2: ['&'],
  3: ['trip', 'let'],
  4: ['e', '&', 'a'],
  5: ['di', 'gi', 'na', 'tom'],
  6: ['ta', 'trip', 'ta', 'let', 'ta'],
  7: ['ka', 'di', 'mi', 'ta', 'ki', 'ta'],
  8: ['ta', 'e', 'ta', '&', 'ta', 'a', 'ta'],
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
