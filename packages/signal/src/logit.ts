/** Probabilities as logits: the logarithm of the odds. */

/** The probability of a logit: 1 / (1 + e^−x). */
export function sigmoid(x: number): number {
  return 1 / (1 + Math.exp(-x));
}
