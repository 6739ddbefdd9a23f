/**
 * How a subdivision is counted aloud.
 * Source: common practice: eighths "1 &", triplets "1 trip let", sixteenths "1 e & a"; the six-slot syllables
 * are ours (no one set is common).
 */
import type { Subdivision } from './cell.ts';

const SYLLABLES: Readonly<Record<Subdivision, readonly string[]>> = {
  1: [''],
  2: ['', '&'],
  3: ['', 'trip', 'let'],
  4: ['', 'e', '&', 'a'],
  6: ['', 'ta', 'trip', 'ta', 'let', 'ta'],
};

/**
 * The syllable for a slot (from 0) of a beat (from 0).
 * @example countSyllable(1, 2, 3) // 'let'
 */
export function countSyllable(beat: number, slot: number, slots: Subdivision): string {
  return slot === 0 ? `${beat + 1}` : (SYLLABLES[slots][slot] ?? '');
}
