/**
 * Middles, spreads and lines that a few wild values do not move.
 *
 * Conventions: values in any order and any unit; the result is in their unit. Of no values at all a middle or a spread
 * is 0.
 */

/** The values in ascending order, as a machine sorts numbers: a comparison that is called for each pair takes five times as long. */
function sorted(values: readonly number[]): Float64Array {
  return new Float64Array(values).sort();
}

/** The arithmetic mean. */
export function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The median: the value in the middle, of an even count the mean of the two. */
export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

/**
 * The lower of the values in the middle: unlike the median of an even count it always is one of the values.
 * Where values lie in two heaps, it lies in the lower heap and not between them.
 */
export function lowerMedian(values: readonly number[]): number {
  return sorted(values)[(values.length - 1) >> 1] ?? 0;
}

/**
 * The q-quantile (0 to 1) by linear interpolation between the values next to it.
 * @source R. J. Hyndman and Y. Fan, "Sample Quantiles in Statistical Packages", The American Statistician 50(4), 1996,
 * definition 7.
 */
export function quantile(values: readonly number[], q: number): number {
  if (values.length === 0) return 0;
  const ascending = sorted(values);
  const at = q * (ascending.length - 1);
  const low = Math.floor(at);
  const share = at - low;
  const below = ascending[low] as number;
  if (share === 0) return below;
  return below * (1 - share) + (ascending[low + 1] as number) * share;
}

/** The value nearest to the q-quantile (0 to 1): always one of the values. @source EBU Tech 3342, its reference code */
export function nearestQuantile(values: readonly number[], q: number): number {
  return sorted(values)[Math.round((values.length - 1) * q)] ?? 0;
}

/** The median distance from the median. */
export function medianDeviation(values: readonly number[]): number {
  const centre = median(values);
  return median(values.map((value) => Math.abs(value - centre)));
}

/**
 * Standard deviations in a median deviation of a normal distribution: one over its upper quartile.
 * @source P. J. Rousseeuw and C. Croux, "Alternatives to the Median Absolute Deviation", JASA 88, 1993
 */
export const NORMAL_DEVIATION = 1.4826;

/** Spread about the median, as a standard deviation of the same normal distribution would be. */
export function spread(values: readonly number[]): number {
  return NORMAL_DEVIATION * medianDeviation(values);
}

/** The straight line through points, weighted: value at 0 and slope. Of no points, or of all at one x, it is level. */
export function fitLine(
  points: readonly { readonly x: number; readonly y: number; readonly weight: number }[],
): { readonly at: number; readonly slope: number } {
  let w = 0;
  let x = 0;
  let y = 0;
  for (const point of points) {
    w += point.weight;
    x += point.weight * point.x;
    y += point.weight * point.y;
  }
  if (w === 0) return { at: 0, slope: 0 };
  const meanX = x / w;
  const meanY = y / w;
  let cross = 0;
  let square = 0;
  for (const point of points) {
    cross += point.weight * (point.x - meanX) * (point.y - meanY);
    square += point.weight * (point.x - meanX) ** 2;
  }
  const slope = square > 0 ? cross / square : 0;
  return { at: meanY - slope * meanX, slope };
}
