/**
 * Where each voice stands on the five-line staff: one map for print, screen and MusicXML.
 *
 * Conventions: lines and spaces count upward from the bottom line (0 = E4 read as in a treble clef, 8 = top line F5),
 * highest voice first.
 * Sources: MusicXML 4.0 tutorial, Percussion (bass drum F4, snare C5, hi-hat G5; percussion clef read as treble);
 * florento/MEI-GMD mapping.md, column "note US" (side stick C5, hi-hat foot D4, crash A5, five toms down to G4); common practice for the
 * rest; the middle line of the hand clap is ours. No one map is binding, so a sheet always prints its legend.
 */
import type { Voice } from '../kit/voice.ts';

/** Place of each voice, in lines and spaces above the bottom line. */
export const STAFF_POSITIONS: Readonly<Record<Voice, number>> = {
  china: 12,
  splash: 11,
  crash: 10,
  hihat: 9,
  'hihat-open': 9,
  ride: 8,
  cowbell: 7,
  'tom-high': 7,
  'tom-mid': 6,
  snare: 5,
  sidestick: 5,
  rimshot: 5,
  clap: 4,
  'tom-low': 3,
  'tom-floor': 2,
  bass: 1,
  'hihat-foot': -1,
};
