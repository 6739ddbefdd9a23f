/**
 * The nearest known word, for "did you mean …?".
 * Conventions: what people also call a thing comes before what is only spelt alike.
 * Source: optimal string alignment distance (Damerau–Levenshtein with adjacent transpositions).
 */
import { ALSO_CALLED } from './also-called.data.ts';

function distance(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const swap =
        a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? (before[j - 2] ?? Infinity) + 1 : Infinity;
      const change = (above[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min((above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, change, swap));
    }
    before = above;
    above = row;
  }
  return above[b.length] ?? 0;
}

function plain(word: string): string {
  return word.toLowerCase().replaceAll(/[\s_-]+/g, '');
}

/**
 * The known word that `word` is most likely a slip of, or another word for, or null when none is near: case, spaces,
 * hyphens and underscores aside, at most a third of the letters may differ.
 */
export function nearest(word: string, known: readonly string[]): string | null {
  const found = plain(word);
  const meant = Object.hasOwn(ALSO_CALLED, found) ? (ALSO_CALLED[found] ?? []) : [];
  const called = meant.find((each) => known.includes(each));
  if (called) return called;
  let best: string | null = null;
  let least = Infinity;
  for (const candidate of known) {
    const d = distance(found, plain(candidate));
    if (d < least) [best, least] = [candidate, d];
  }
  return least <= Math.max(1, Math.floor(found.length / 3)) ? best : null;
}
