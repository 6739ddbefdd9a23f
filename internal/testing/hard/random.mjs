/** Chance from a seed: the same seed, the same input. Source: mulberry32, T. Ettinger, public domain. */

/**
 * @param {number} seed
 * @returns {{ next: () => number, below: (n: number) => number, of: <T>(list: readonly T[]) => T }}
 */
export function chance(seed) {
  let state = (seed * 0x9e37_79b1 + 0x85eb_ca6b) | 0;
  const next = () => {
    state = (state + 0x6d2b_79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (n) => Math.floor(next() * n);
  return { next, below, of: (list) => /** @type {any} */ (list[below(list.length)]) };
}
