/**
 * Which notehead of the music font each voice has: the kinds of heads are core's map. The ringed head of the hi-hat
 * splash is ours.
 */
import { type Articulation, type HeadKind, headKindOf, type Voice } from '@shedbook/core';

/** Noteheads by their SMuFL names. */
export type Head =
  | 'noteheadBlack'
  | 'noteheadXBlack'
  | 'noteheadSlashedBlack1'
  | 'noteheadDiamondBlack'
  | 'noteheadCircleX'
  | 'noteheadSlashHorizontalEnds'
  | 'noteheadPlusBlack';

/** SMuFL code points. @source SMuFL, metadata/glyphnames.json */
export const HEAD_CODE_POINTS: Readonly<Record<Head, string>> = {
  noteheadBlack: 'E0A4',
  noteheadXBlack: 'E0A9',
  noteheadSlashedBlack1: 'E0CF',
  noteheadDiamondBlack: 'E0DB',
  noteheadCircleX: 'E0B3',
  noteheadSlashHorizontalEnds: 'E101',
  noteheadPlusBlack: 'E0AF',
};

/** SMuFL name of each kind of head. */
const BY_KIND: Readonly<Record<HeadKind, Head>> = {
  normal: 'noteheadBlack',
  x: 'noteheadXBlack',
  slashed: 'noteheadSlashedBlack1',
  diamond: 'noteheadDiamondBlack',
  ringed: 'noteheadCircleX',
  slash: 'noteheadSlashHorizontalEnds',
  plus: 'noteheadPlusBlack',
};

/** The notehead of a stroke. */
export function headOf({ voice, articulation }: { voice: Voice; articulation: Articulation }): Head {
  return BY_KIND[headKindOf(voice, articulation)];
}
