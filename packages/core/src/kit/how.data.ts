/**
 * How a limb plays a voice, where that is to be said: plain words from a short list, and which voices they go with.
 *
 * Conventions: words as they stand in lesson files; at most one of each kind for a voice. A teacher may write words of
 * their own beside these; they are shown as they are.
 * Source: common practice of the trade: heel down or up on a pedal; tip or shoulder of the stick; centre or edge of a
 * head; bow, bell or edge of a cymbal; low, half and full strokes by how high the stick starts.
 */
import type { Voice } from './voice.ts';

/** What words of one kind tell apart. */
export type HowKind = 'heel' | 'stick' | 'place' | 'height';

/** The words, in the order in which they are offered, and what each tells apart. */
export const HOW_KINDS = {
  'heel down': 'heel',
  'heel up': 'heel',
  tip: 'stick',
  shoulder: 'stick',
  centre: 'place',
  edge: 'place',
  bow: 'place',
  bell: 'place',
  'low stroke': 'height',
  'half stroke': 'height',
  'full stroke': 'height',
} as const satisfies Readonly<Record<string, HowKind>>;

/** One of the words. */
export type HowWord = keyof typeof HOW_KINDS;

/** All of the words. */
export const HOW_WORDS = Object.keys(HOW_KINDS) as readonly HowWord[];

const PEDAL: readonly HowWord[] = ['heel down', 'heel up'];
const HEIGHTS: readonly HowWord[] = ['low stroke', 'half stroke', 'full stroke'];
const CYMBAL: readonly HowWord[] = ['tip', 'shoulder', 'bow', 'bell', 'edge', ...HEIGHTS];
const DRUM: readonly HowWord[] = ['tip', 'centre', 'edge', ...HEIGHTS];

/** The words that go with each voice. */
export const HOW_OF: Readonly<Record<Voice, readonly HowWord[]>> = {
  ride: CYMBAL,
  hihat: CYMBAL,
  'hihat-open': CYMBAL,
  'hihat-foot': PEDAL,
  bass: PEDAL,
  snare: DRUM,
  sidestick: HEIGHTS,
  rimshot: HEIGHTS,
  crash: CYMBAL,
  'tom-high': DRUM,
  'tom-mid': DRUM,
  'tom-low': DRUM,
  'tom-floor': DRUM,
  splash: CYMBAL,
  china: CYMBAL,
  cowbell: HEIGHTS,
  clap: [],
};

/** Whether a text is one of the words. */
export function isHowWord(text: string): text is HowWord {
  return Object.hasOwn(HOW_KINDS, text);
}
