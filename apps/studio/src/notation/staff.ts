/**
 * With which head a voice is drawn; where it stands is core's map, that of the printed sheet.
 * Source: crosses for cymbals, black for drums (common practice).
 */
import type { Articulation, Voice } from '@shedbook/core';
import type { Glyph } from './glyphs.data.ts';

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
