/**
 * Which notehead each voice has; where it stands is core's map.
 *
 * Sources: x for cymbals, normal for drums (common practice); side stick and hi-hat foot x: florento/MEI-GMD
 * mapping.md, column "note US". The slashed head of the rim shot and the ringed one of the hi-hat splash are ours.
 */
import type { Voice } from '@shedbook/core';

/** Noteheads by their SMuFL names. */
export type Head =
  | 'noteheadBlack'
  | 'noteheadXBlack'
  | 'noteheadSlashedBlack1'
  | 'noteheadDiamondBlack'
  | 'noteheadCircleX';

/** SMuFL code points. @source SMuFL, metadata/glyphnames.json */
export const HEAD_CODE_POINTS: Readonly<Record<Head, string>> = {
  noteheadBlack: 'E0A4',
  noteheadXBlack: 'E0A9',
  noteheadSlashedBlack1: 'E0CF',
  noteheadDiamondBlack: 'E0DB',
  noteheadCircleX: 'E0B3',
};

/** Head of a plain stroke of each voice, highest voice first. */
export const VOICE_HEADS: Readonly<Record<Voice, Head>> = {
  crash: 'noteheadXBlack',
  hihat: 'noteheadXBlack',
  'hihat-open': 'noteheadXBlack',
  ride: 'noteheadXBlack',
  'tom-high': 'noteheadBlack',
  'tom-mid': 'noteheadBlack',
  snare: 'noteheadBlack',
  sidestick: 'noteheadXBlack',
  rimshot: 'noteheadSlashedBlack1',
  'tom-low': 'noteheadBlack',
  bass: 'noteheadBlack',
  'hihat-foot': 'noteheadXBlack',
};
