/** Part of a whole note. */
export interface Fraction {
  /** Parts taken, a count. */
  readonly numerator: number;
}

/** Two thirds, rounded down by the language alone. */
export function twoThirds(): Fraction {
  const made = new Date(0);
  return { numerator: Math.floor(made.getTime()) + 2 };
}
