/**
 * Curves over frequency, given by a few points: how instruments are described in this room.
 *
 * Conventions: frequencies in hertz, rising; the other value in whatever unit the curve is of.
 */

/** Points of a curve: `[frequencyHz, value]`, frequency rising. */
export type Curve = readonly (readonly [frequencyHz: number, value: number])[];

/**
 * Value of a curve at a frequency: straight lines over the logarithm of frequency, flat outside the points.
 * @example curveAt([[100, 0], [400, 6]], 200) // 3
 * @throws RangeError when the curve has no points.
 */
export function curveAt(curve: Curve, frequencyHz: number): number {
  const first = curve[0];
  if (!first) throw new RangeError('Internal error: a curve needs at least one point');
  let [beforeHz, before] = first;
  if (frequencyHz <= beforeHz) return before;
  for (const [hz, value] of curve) {
    if (frequencyHz <= hz) {
      return before + ((value - before) * Math.log(frequencyHz / beforeHz)) / Math.log(hz / beforeHz);
    }
    beforeHz = hz;
    before = value;
  }
  return before;
}
