/** What core says. */
export interface LateFact {
  readonly fact: 'late' | 'early';
}
