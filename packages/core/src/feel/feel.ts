/**
 * Feel: how evenly a beat is divided in performance.
 *
 * Conventions: a swing ratio is long : short of the two parts of a beat (or, for swung sixteenths, of half a
 * beat), never an "amount". 1 is even, 2 is triplet swing.
 */
export interface SwingRatio {
  readonly kind: 'ratio';
  /** Long part divided by short part, 1 to 4. */
  readonly ratio: number;
  /** What is swung: the halves of a beat, or the halves of each half beat. */
  readonly of: 'eighths' | 'sixteenths';
}

/** How the parts of a beat are played. */
export type Feel =
  /** As written: eighths even, triplets exact. */
  | { readonly kind: 'even' }
  | SwingRatio
  /** The ratio that drummers use on the ride at the tempo. */
  | { readonly kind: 'by tempo' };
