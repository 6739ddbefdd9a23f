/** With which head a voice is drawn: kinds of heads and where they stand are core's maps, those of the printed sheet. */
import { type Articulation, type HeadKind, headKindOf, type Voice } from '@shedbook/core';
import type { Glyph } from './glyphs.data.ts';

/** The glyph of each kind of head; slashes and rings are drawn over it. */
const HEADS: Readonly<Record<HeadKind, Glyph>> = {
  normal: 'blackHead',
  x: 'crossHead',
  slashed: 'blackHead',
  diamond: 'diamondHead',
  ringed: 'crossHead',
  slash: 'slashHead',
  plus: 'plusHead',
};

/** The head that a voice is drawn with. */
export function headOf(voice: Voice, articulation: Articulation): Glyph {
  return HEADS[headKindOf(voice, articulation)];
}
