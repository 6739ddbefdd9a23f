/** What may be there by chance. */

/** How likely so many of `count` things or more are, each with a chance: the upper tail of a binomial distribution, 0 to 1. */
export function atLeast(some: number, count: number, chance: number): number {
  let term = (1 - chance) ** count;
  let below = 0;
  for (let k = 0; k < some; k += 1) {
    below += term;
    term *= ((count - k) / (k + 1)) * (chance / (1 - chance));
  }
  return Math.max(0, 1 - below);
}
