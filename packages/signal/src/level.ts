/**
 * How high and how strong a stretch of samples is.
 *
 * Conventions: samples of full scale ±1; nothing at all has the level 0.
 */

/** The highest amplitude. */
export function peakOf(samples: ArrayLike<number>): number {
  let peak = 0;
  for (let i = 0; i < samples.length; i += 1) peak = Math.max(peak, Math.abs(samples[i] as number));
  return peak;
}

/** The sum of the squares. */
export function energyOf(samples: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < samples.length; i += 1) sum += (samples[i] as number) ** 2;
  return sum;
}

/** Mean power: the mean of the squares. */
export function meanSquare(samples: ArrayLike<number>): number {
  return samples.length === 0 ? 0 : energyOf(samples) / samples.length;
}

/** The amplitude of a steady signal of the same power. */
export function rootMeanSquare(samples: ArrayLike<number>): number {
  return Math.sqrt(meanSquare(samples));
}
