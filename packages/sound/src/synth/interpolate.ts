/** Reading a buffer between its samples. */

/**
 * The value `part` (0…1) of a sample after sample `before`, on a cubic (Catmull-Rom) through four samples.
 * Outside the buffer there is silence.
 */
export function hermite(from: Float32Array, before: number, part: number): number {
  const a = from[before - 1] ?? 0;
  const b = from[before] ?? 0;
  const c = from[before + 1] ?? 0;
  const d = from[before + 2] ?? 0;
  const slope = (c - a) / 2;
  const curve = a - 2.5 * b + 2 * c - 0.5 * d;
  const twist = (d - a) / 2 + 1.5 * (b - c);
  return ((twist * part + curve) * part + slope) * part + b;
}
