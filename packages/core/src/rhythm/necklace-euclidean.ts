/**
 * Euclidean rhythms: strokes spread over a cycle as evenly as its places allow.
 *
 * Conventions: 0 and 1, one a place, from the first stroke.
 * Source: G. Toussaint 2005, "The Euclidean algorithm generates traditional musical rhythms", BRIDGES, 47–56,
 * with E. Bjorklund's procedure.
 * Differs from the source: a rhythm may start at another of its strokes than the paper prints it; compare by
 * {@link areRotations}.
 */

/**
 * The Euclidean rhythm of `onsets` strokes in `length` places.
 * @example euclideanRhythm(3, 8) // [1, 0, 0, 1, 0, 0, 1, 0]
 * @throws RangeError unless 0 ≤ onsets ≤ length, both whole and length at least 1.
 */
export function euclideanRhythm(onsets: number, length: number): readonly number[] {
  if (!Number.isInteger(onsets) || !Number.isInteger(length) || onsets < 0 || length < 1 || onsets > length) {
    throw new RangeError(`Internal error: ${onsets} strokes do not fit in ${length} places`);
  }
  if (onsets === 0) return new Array<number>(length).fill(0);
  let heads: number[][] = Array.from({ length: onsets }, () => [1]);
  let tails: number[][] = Array.from({ length: length - onsets }, () => [0]);
  while (tails.length > 1) {
    const pairs = Math.min(heads.length, tails.length);
    const joined = heads.slice(0, pairs).map((head, i) => [...head, ...(tails[i] as number[])]);
    tails = heads.length > tails.length ? heads.slice(pairs) : tails.slice(pairs);
    heads = joined;
  }
  return [...heads, ...tails].flat();
}
