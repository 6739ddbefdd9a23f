/**
 * Cyclic patterns: rotation, complement, mirror image, and necklaces (the classes of patterns that are rotations
 * of one another).
 *
 * Conventions: a pattern is a list of whole numbers from 0, one a place: 0 and 1 for silence and stroke, or the
 * numbers of cells. A looped bar has no first place, so its class is what is heard when one does not know "1".
 * Sources: OEIS A000031, A001867, A001868 (counts, formula); J. Sawada 2001, SIAM J. Comput. 31(1), for listing
 * necklaces in order; K. S. Booth 1980, Inf. Process. Lett. 10(4), for the least rotation.
 */

/** How many numbers from 1 to `n` have no divisor in common with `n` (Euler's totient). */
export function totient(n: number): number {
  let result = n;
  let rest = n;
  for (let p = 2; p * p <= rest; p += 1) {
    if (rest % p !== 0) continue;
    while (rest % p === 0) rest /= p;
    result -= result / p;
  }
  return rest > 1 ? result - result / rest : result;
}

function divisorsOf(n: number): readonly number[] {
  return Array.from({ length: n }, (_, i) => i + 1).filter((d) => n % d === 0);
}

/**
 * How many necklaces there are of `length` places in `colours` kinds; exact.
 * @example countNecklaces(16, 2) // 4116n
 * @source OEIS A000031: (1/n)·Σ φ(d)·k^(n/d) over the divisors d of n
 */
export function countNecklaces(length: number, colours: number): bigint {
  const terms = divisorsOf(length).map((d) => BigInt(totient(d)) * BigInt(colours) ** BigInt(length / d));
  return terms.reduce((sum, term) => sum + term, 0n) / BigInt(length);
}

/** The binomial coefficient "n choose k"; exact. */
export function binomial(n: number, k: number): bigint {
  let result = 1n;
  for (let i = 1; i <= k; i += 1) result = (result * BigInt(n - k + i)) / BigInt(i);
  return result;
}

/**
 * How many necklaces of `length` places have exactly `onsets` strokes; exact.
 * @example countRhythmNecklaces(16, 5) // 273n
 * @source (1/n)·Σ φ(d)·C(n/d, k/d) over the common divisors d of n and k (Burnside's lemma)
 */
export function countRhythmNecklaces(length: number, onsets: number): bigint {
  const common = divisorsOf(length).filter((d) => onsets % d === 0);
  const terms = common.map((d) => BigInt(totient(d)) * binomial(length / d, onsets / d));
  return terms.reduce((sum, term) => sum + term, 0n) / BigInt(length);
}

/** Every necklace of `length` places in `colours` kinds, each by its least rotation, in ascending order. */
export function* listNecklaces(length: number, colours: number): Generator<readonly number[]> {
  const word = new Array<number>(length).fill(0);
  yield [...word];
  for (;;) {
    let last = length - 1;
    while (last >= 0 && word[last] === colours - 1) last -= 1;
    if (last < 0) return;
    word[last] = (word[last] as number) + 1;
    for (let i = last + 1; i < length; i += 1) word[i] = word[i - last - 1] as number;
    if (length % (last + 1) === 0) yield [...word];
  }
}

/** How far to rotate to the left for the least rotation; the smallest such number. */
export function leastRotation(pattern: readonly number[]): number {
  const n = pattern.length;
  let best = 0;
  let other = 1;
  let same = 0;
  while (best < n && other < n && same < n) {
    const a = pattern[(best + same) % n] as number;
    const b = pattern[(other + same) % n] as number;
    if (a === b) {
      same += 1;
      continue;
    }
    if (a > b) best += same + 1;
    else other += same + 1;
    if (best === other) other += 1;
    same = 0;
  }
  return Math.min(best, other);
}

/** The pattern started `places` later; negative starts earlier. */
export function rotate<T>(pattern: readonly T[], places: number): readonly T[] {
  const n = pattern.length;
  const start = ((places % n) + n) % n;
  return [...pattern.slice(start), ...pattern.slice(0, start)];
}

/** The representative of a pattern's class: its least rotation. */
export function necklaceOf(pattern: readonly number[]): readonly number[] {
  return rotate(pattern, leastRotation(pattern));
}

/** Whether one pattern is the other, started at another place. */
export function areRotations(a: readonly number[], b: readonly number[]): boolean {
  if (a.length !== b.length) return false;
  const other = necklaceOf(b);
  return necklaceOf(a).every((value, i) => value === other[i]);
}

/** Strokes where there was silence and silence where there were strokes. */
export function complement(bits: readonly number[]): readonly number[] {
  return bits.map((bit) => (bit === 0 ? 1 : 0));
}

/** The pattern played backwards from "1", which stays in its place. */
export function mirror<T>(pattern: readonly T[]): readonly T[] {
  return [...pattern.slice(0, 1), ...pattern.slice(1).reverse()];
}
