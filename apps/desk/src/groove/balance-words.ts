/**
 * Levels in words, as a teacher would say them.
 * Source: common practice for the words; the limits in dB are ours, around the levels that a lesson starts from.
 */
import type { DeskWords } from '@shedbook/words';

/** Name of a range of levels. */
export type BalanceWord = keyof DeskWords['groove']['words'];

/** Highest level in dB of each range, lowest first. */
const RANGES: readonly (readonly [number, BalanceWord])[] = [
  [-24, 'gone'],
  [-16, 'feathered'],
  [-11, 'soft'],
  [-6, 'wellUnder'],
  [-2, 'under'],
  [1, 'level'],
];

/** The word for a level in dB relative to the lead voice. */
export function balanceWord(levelDb: number): BalanceWord {
  return RANGES.find(([most]) => levelDb <= most)?.[1] ?? 'above';
}
