/**
 * How sure a share is, given how often it was tried.
 * Source: E. B. Wilson 1927, J. Am. Stat. Assoc. 22(158): lower bound of the score interval.
 */

/** Two-sided 95 %. */
const Z = 1.959964;

/**
 * Lower bound of the share behind `successes` of `tries` (both may be weighted), 0 to 1; 0 without tries.
 * @example wilsonLower(10, 10).toFixed(3) // '0.722'
 */
export function wilsonLower(successes: number, tries: number): number {
  if (tries <= 0) return 0;
  const share = successes / tries;
  const z2 = Z * Z;
  const middle = share + z2 / (2 * tries);
  const half = Z * Math.sqrt((share * (1 - share)) / tries + z2 / (4 * tries * tries));
  return Math.max(0, (middle - half) / (1 + z2 / tries));
}
