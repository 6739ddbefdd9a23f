/**
 * Randomness as an argument: a small generator with a seed, the same on every machine.
 * Source: M. E. O'Neill's PCG-like splitmix32 mixer, public domain (constants of MurmurHash3's 32-bit finaliser).
 */
export interface Random {
  /** A number in [0, 1). */
  next(): number;
  /** A whole number in [0, below). */
  below(below: number): number;
}

/** A generator that gives the same sequence for the same seed (any number or text). */
export function seededRandom(seed: number | string): Random {
  let state = typeof seed === 'number' ? seed >>> 0 : hashText(seed);
  const next = () => {
    state = (state + 0x9e3779b9) >>> 0;
    let z = state ^ (state >>> 16);
    z = Math.imul(z, 0x85ebca6b);
    z ^= z >>> 13;
    z = Math.imul(z, 0xc2b2ae35);
    z ^= z >>> 16;
    return (z >>> 0) / 2 ** 32;
  };
  return { next, below: (below) => Math.floor(next() * below) };
}

function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
