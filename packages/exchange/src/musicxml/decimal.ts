/**
 * Decimal numbers of MusicXML as exact fractions.
 * Source: MusicXML 4.0, types divisions and positive-divisions: decimals, "16383 at most" to fit MIDI.
 */
import { type Fraction, fraction } from '@shedbook/core';

/** A decimal such as `1.5` that is not negative, or null; nine digits and five decimals at most. */
export function parseDecimal(text: string | undefined): Fraction | null {
  const match = /^(\d{1,9})(?:\.(\d{1,5}))?$/.exec(text ?? '');
  if (!match) return null;
  const decimals = match[2] ?? '';
  return fraction(Number(`${match[1]}${decimals}`), 10 ** decimals.length);
}
