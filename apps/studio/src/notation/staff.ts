/**
 * Where a voice stands when it is drawn, and with which head.
 *
 * Conventions: `line` counts lines and spaces upward from the bottom line of five (0, 8 is the top line). The
 * places are those of the printed sheet.
 * Source: MusicXML 4.0 tutorial, Percussion; heads: crosses for cymbals, black for drums (common practice).
 */
import type { Articulation, Voice } from '@shedbook/core';
import type { Glyph } from './glyphs.data.ts';

/** Place of each voice on the five-line staff. */
export const STAFF_PLACES: Readonly<Record<Voice, number>> = {
  crash: 10,
  hihat: 9,
  'hihat-open': 9,
  ride: 8,
  'tom-high': 7,
  'tom-mid': 6,
  snare: 5,
  sidestick: 5,
  rimshot: 5,
  'tom-low': 3,
  bass: 1,
  'hihat-foot': -1,
};

const CROSSED: ReadonlySet<Voice> = new Set([
  'ride',
  'hihat',
  'hihat-open',
  'hihat-foot',
  'crash',
  'sidestick',
]);

/** The head that a voice is drawn with. */
export function headOf(voice: Voice, articulation: Articulation): Glyph {
  if (articulation === 'bell') return 'diamondHead';
  return CROSSED.has(voice) ? 'crossHead' : 'blackHead';
}
