/**
 * Secrets that are nearly right: what a stranger could make of a link that he saw half of, and what a careless program
 * would take for the same.
 *
 * Conventions: the same seed gives the same secrets; none of them is one of those that it was made from.
 */

const SIGNS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Numbers from 0 to 1 by a seed. Source: Marsaglia, "Xorshift RNGs" (2003), triple 13, 17, 5. @param {number} seed */
export function numbersFrom(seed) {
  let state = seed | 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

/** @type {readonly ((token: string, other: string, random: () => number) => string)[]} */
const MUTATIONS = [
  // one sign is another
  (token, _other, random) => {
    const at = Math.floor(random() * token.length);
    return token.slice(0, at) + SIGNS[Math.floor(random() * SIGNS.length)] + token.slice(at + 1);
  },
  // the last sign of 43 has two bits that a decoder of base64 throws away
  (token, _other, random) => token.slice(0, -1) + SIGNS[Math.floor(random() * SIGNS.length)],
  // two signs have changed places
  (token, _other, random) => {
    const at = Math.floor(random() * (token.length - 1));
    return token.slice(0, at) + token[at + 1] + token[at] + token.slice(at + 2);
  },
  // a part of it
  (token, _other, random) => token.slice(0, Math.floor(random() * token.length)),
  (token, _other, random) => token.slice(1 + Math.floor(random() * (token.length - 1))),
  // more than it
  (token, _other, random) => token + SIGNS[Math.floor(random() * SIGNS.length)],
  (token, _other, random) => SIGNS[Math.floor(random() * SIGNS.length)] + token,
  (token, other) => token + other,
  // the beginning of one and the end of another
  (token, other, random) => {
    const at = 1 + Math.floor(random() * (token.length - 1));
    return token.slice(0, at) + other.slice(at);
  },
  // what programs take away, add or fold
  (token, _other, random) =>
    token + ['=', '==', '.', ' ', '\t', '\0', '/', '%', '%00', ';', '?', '#'][Math.floor(random() * 12)],
  (token, _other, random) =>
    [' ', '\0', './', '../', '..\\', '*', '%', "'", '"'][Math.floor(random() * 9)] + token,
  (token, _other, random) => {
    const at = Math.floor(random() * token.length);
    const sign = token[at] ?? '';
    const folded = sign === sign.toLowerCase() ? sign.toUpperCase() : sign.toLowerCase();
    return token.slice(0, at) + folded + token.slice(at + 1);
  },
  // full-width forms, which NFKC folds to plain ones
  (token, _other, random) => {
    const at = Math.floor(random() * token.length);
    return token.slice(0, at) + String.fromCharCode(token.charCodeAt(at) + 0xfee0) + token.slice(at + 1);
  },
  (token) => token.replaceAll('-', '+').replaceAll('_', '/'),
  (token) => [...token].reverse().join(''),
  (_token, _other, random) =>
    Array.from({ length: 43 }, () => SIGNS[Math.floor(random() * SIGNS.length)]).join(''),
  // a pattern instead of a secret
  (token, _other, random) =>
    token.slice(0, Math.floor(random() * 20)) +
    ['%', '*', '.*', "' or 1=1 --", '_'.repeat(23)][Math.floor(random() * 5)],
];

/**
 * Secrets that are nearly right.
 * @param {readonly string[]} tokens those that are right
 * @param {number} count
 * @param {number} seed
 * @returns {readonly string[]}
 */
export function mutatedTokens(tokens, count, seed) {
  const random = numbersFrom(seed);
  const right = new Set(tokens);
  /** @type {string[]} */
  const made = [];
  while (made.length < count) {
    const mutate = MUTATIONS[made.length % MUTATIONS.length];
    const [token = '', other = ''] = [0, 0].map(() => tokens[Math.floor(random() * tokens.length)] ?? '');
    const next = mutate?.(token, other, random) ?? '';
    // one that cannot be made another is replaced by a random one
    made.push(right.has(next) || next === '' ? `${token}${made.length}` : next);
  }
  return made;
}
