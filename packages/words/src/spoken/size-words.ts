/** Sizes of files in words. */
import type { PracticeWords } from '../screens/practice.ts';

/** A size in bytes, in kilobytes, megabytes or gigabytes; at least 1 kB. */
export function sizeWords(words: PracticeWords['sizes'], bytes: number): string {
  if (bytes < 1e6) return words.kilobytes({ size: Math.max(1, bytes / 1e3) });
  return bytes < 1e9 ? words.megabytes({ size: bytes / 1e6 }) : words.gigabytes({ size: bytes / 1e9 });
}
