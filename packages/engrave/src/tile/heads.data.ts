/**
 * Where each voice stands on the five-line staff and which notehead it has.
 *
 * Conventions: `position` counts lines and spaces from the bottom line (0 = E4 read as treble, 8 = top line F5).
 * Sources: MusicXML 4.0 tutorial, Percussion (bass drum F4, snare C5, hi-hat G5; percussion clef read as
 * treble); florento/MEI-GMD mapping.md, column "note US" (side stick C5 x, hi-hat foot D4 x, crash A5 x); heads:
 * x for cymbals, normal for drums (common practice). Published maps differ (some swap ride and hi-hat), so a
 * sheet always prints its legend. The slashed head of the rim shot and the ringed one of the hi-hat splash are
 * ours.
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

/** Where a voice stands and with which head. */
export interface StaffPlace {
  readonly position: number;
  readonly head: Head;
}

/** Place and head of a plain stroke of each voice. */
export const STAFF_MAP: Readonly<Record<Voice, StaffPlace>> = {
  crash: { position: 10, head: 'noteheadXBlack' },
  hihat: { position: 9, head: 'noteheadXBlack' },
  'hihat-open': { position: 9, head: 'noteheadXBlack' },
  ride: { position: 8, head: 'noteheadXBlack' },
  'tom-high': { position: 7, head: 'noteheadBlack' },
  'tom-mid': { position: 6, head: 'noteheadBlack' },
  snare: { position: 5, head: 'noteheadBlack' },
  sidestick: { position: 5, head: 'noteheadXBlack' },
  rimshot: { position: 5, head: 'noteheadSlashedBlack1' },
  'tom-low': { position: 3, head: 'noteheadBlack' },
  bass: { position: 1, head: 'noteheadBlack' },
  'hihat-foot': { position: -1, head: 'noteheadXBlack' },
};
