/**
 * Variable-length quantities: seven bits a byte, most significant first, the top bit set on all but the last.
 * Source: Standard MIDI Files 1.0 (MMA RP-001), "Variable-length quantities".
 */

/** The largest number a variable-length quantity may hold: four bytes of seven bits. */
export const VLQ_MAX = 0x0fffffff;

/**
 * The bytes of a variable-length quantity.
 * @example encodeVlq(0x80) // [0x81, 0x00]
 * @throws RangeError when `value` is not a whole number from 0 to {@link VLQ_MAX}.
 */
export function encodeVlq(value: number): readonly number[] {
  if (!Number.isInteger(value) || value < 0 || value > VLQ_MAX) {
    throw new RangeError(`Internal error: ${value} is not a variable-length quantity`);
  }
  const bytes = [value & 0x7f];
  for (let rest = value >>> 7; rest > 0; rest >>>= 7) bytes.unshift((rest & 0x7f) | 0x80);
  return bytes;
}
