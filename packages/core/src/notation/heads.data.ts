/**
 * Which kind of notehead each voice has: one map for print, screen and MusicXML.
 *
 * Sources: crosses for cymbals, normal heads for drums (N. Weinberg, Percussive Notes, June 1994, and common
 * practice since); side stick and hi-hat foot crossed: florento/MEI-GMD mapping.md, column "note US". The slashed
 * head of the rim shot is ours: a rim shot and a snare stroke stand in the same space. So is the slash of a
 * sweep: drawn over the head, as the brush is. The plus of the
 * cowbell is ours, since it stands where the high tom does.
 */
import type { Articulation, Voice } from '../kit/voice.ts';

/** A notehead: round, a cross, round with a slash, a diamond, a cross in a ring, a slash, or a plus. */
export type HeadKind = 'normal' | 'x' | 'slashed' | 'diamond' | 'ringed' | 'slash' | 'plus';

/** Head of a plain stroke of each voice. */
export const HEAD_KINDS: Readonly<Record<Voice, HeadKind>> = {
  china: 'x',
  splash: 'x',
  crash: 'x',
  hihat: 'x',
  'hihat-open': 'x',
  ride: 'x',
  cowbell: 'plus',
  clap: 'x',
  'tom-high': 'normal',
  'tom-mid': 'normal',
  snare: 'normal',
  sidestick: 'x',
  rimshot: 'slashed',
  'tom-low': 'normal',
  'tom-floor': 'normal',
  bass: 'normal',
  'hihat-foot': 'x',
};

/** Head of a stroke that is struck otherwise than plainly, or null where it keeps its voice's. */
const ARTICULATED_HEADS: Readonly<Record<Articulation, HeadKind | null>> = {
  normal: null,
  bell: 'diamond',
  splash: 'ringed',
  buzz: null,
  tap: null,
  sweep: 'slash',
  flam: null,
  drag: null,
};

/** The head that a stroke has. */
export function headKindOf(voice: Voice, articulation: Articulation): HeadKind {
  return ARTICULATED_HEADS[articulation] ?? HEAD_KINDS[voice];
}
