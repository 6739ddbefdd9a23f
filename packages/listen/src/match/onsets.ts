/**
 * Matching estimated onsets to reference onsets, and what follows from it.
 *
 * Conventions: seconds, ascending; each onset is matched at most once; the number of matches is the largest
 * possible.
 * Source: C. Raffel et al., "mir_eval", ISMIR 2014, `onset.f_measure` (maximum bipartite matching, window
 * inclusive); MIREX audio onset detection. Differs from the source: when both lists are empty everything is 1, as
 * in madmom, for nothing was missed; unsorted or negative times are refused, not only huge ones.
 */

/** How well estimates match a reference. */
export interface OnsetScore {
  readonly matches: number;
  /** Share of the estimates that are matched. */
  readonly precision: number;
  /** Share of the reference that is matched. */
  readonly recall: number;
  /** Harmonic mean of precision and recall, 0 to 1. */
  readonly f: number;
}

function requireAscending(times: readonly number[], name: string): void {
  times.forEach((time, i) => {
    if (!(time >= 0) || time > 1e5) {
      throw new RangeError(
        `${name}[${i}] is ${time}, expected seconds from 0 to 100000; are they in milliseconds?`,
      );
    }
    if (i > 0 && time < times[i - 1]!)
      throw new RangeError(`${name}[${i}] is before ${name}[${i - 1}]; sort them`);
  });
}

/**
 * Pairs of indices (reference, estimate) at most `windowSeconds` apart; as many as possible.
 * @throws RangeError when times are not ascending seconds.
 */
export function matchOnsets(
  reference: readonly number[],
  estimate: readonly number[],
  windowSeconds: number,
): readonly (readonly [number, number])[] {
  requireAscending(reference, 'reference');
  requireAscending(estimate, 'estimate');
  const pairs: [number, number][] = [];
  let e = 0;
  reference.forEach((time, r) => {
    while (e < estimate.length && time - estimate[e]! > windowSeconds) e += 1;
    if (e < estimate.length && estimate[e]! - time <= windowSeconds) {
      pairs.push([r, e]);
      e += 1;
    }
  });
  return pairs;
}

/** Precision, recall and F-measure. @throws RangeError when times are not ascending seconds. */
export function scoreOnsets(
  reference: readonly number[],
  estimate: readonly number[],
  windowSeconds: number,
): OnsetScore {
  const matches = matchOnsets(reference, estimate, windowSeconds).length;
  if (reference.length === 0 && estimate.length === 0) return { matches, precision: 1, recall: 1, f: 1 };
  const precision = estimate.length === 0 ? 0 : matches / estimate.length;
  const recall = reference.length === 0 ? 0 : matches / reference.length;
  const f = matches === 0 ? 0 : (2 * precision * recall) / (precision + recall);
  return { matches, precision, recall, f };
}
