/** Sounds that came in pieces. */

/** The pieces one after another; the only one itself where there is no other. */
export function joined(pieces: readonly Float32Array[]): Float32Array {
  const [only, ...others] = pieces;
  if (only && others.length === 0) return only;
  const all = new Float32Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
