/** Medians and spreads that a few wild values do not move. */

/** The median, or 0 of nothing. */
export function median(values: readonly number[]): number {
  if (values.length === 0) return 0;
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** The q-quantile (0 to 1) by linear interpolation, or 0 of nothing. */
export function quantile(values: readonly number[], q: number): number {
  if (values.length === 0) return 0;
  const sorted = values.toSorted((a, b) => a - b);
  const at = q * (sorted.length - 1);
  const low = Math.floor(at);
  const share = at - low;
  return sorted[low]! * (1 - share) + sorted[Math.min(low + 1, sorted.length - 1)]! * share;
}

/**
 * Spread about the median, as a standard deviation of the same normal distribution would be.
 * @source Median absolute deviation times 1.4826 (P. J. Rousseeuw and C. Croux, JASA 88, 1993).
 */
export function spread(values: readonly number[]): number {
  const centre = median(values);
  return 1.4826 * median(values.map((value) => Math.abs(value - centre)));
}

/** The straight line through points, weighted: value at 0 and slope. */
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
