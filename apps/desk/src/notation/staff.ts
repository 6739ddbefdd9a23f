/** With which head a voice is drawn: kinds of heads and where they stand are core's maps, those of the printed sheet. */
import { type Articulation, HEAD_KINDS, type Voice } from '@shedbook/core';
import type { Glyph } from './glyphs.data.ts';

/** The head that a voice is drawn with. */
export function headOf(voice: Voice, articulation: Articulation): Glyph {
  if (articulation === 'bell') return 'diamondHead';
  return HEAD_KINDS[voice] === 'x' ? 'crossHead' : 'blackHead';
}
