/**
 * Which marks each voice knows, and what they ask of it: a way of striking, or another voice of the same thing. Every
 * voice knows a plain stroke, an accent and a ghost note beside these.
 *
 * Conventions: marks by their small letters; null where a voice cannot be played so.
 * Source: common practice of text drum tablature; bell on the ride and splash by the foot are read from the same
 * letters as buzz and open; a brush that is drawn over the head is ours, since text has no sign for it.
 */
import type { Letter } from '../rhythm/cell.ts';
import type { Voice, WrittenArticulation } from './voice.ts';

/** A mark that not every voice knows. */
export type SpecialLetter = Exclude<Letter, 'x' | 'g'>;

/** A voice that another one becomes by a mark: the side stick of the snare. */
export type TurnedVoice = 'hihat-open' | 'sidestick' | 'rimshot';

/** What each mark asks of a voice. */
export type MarkedRow = Readonly<
  Record<SpecialLetter, TurnedVoice | Exclude<WrittenArticulation, 'normal'> | null>
>;

const PLAIN: MarkedRow = { f: null, d: null, b: null, o: null, s: null, r: null, w: null };
const DRUM: MarkedRow = { ...PLAIN, f: 'flam', d: 'drag', b: 'buzz' };
const SNARE: MarkedRow = { ...DRUM, s: 'sidestick', r: 'rimshot', w: 'sweep' };
const RIDE: MarkedRow = { ...PLAIN, b: 'bell' };
const HIHAT: MarkedRow = { ...PLAIN, o: 'hihat-open' };
const HIHAT_FOOT: MarkedRow = { ...PLAIN, o: 'splash' };

/** The table. */
export const MARKED: Readonly<Record<Voice, MarkedRow>> = {
  ride: RIDE,
  hihat: HIHAT,
  'hihat-open': HIHAT,
  'hihat-foot': HIHAT_FOOT,
  bass: PLAIN,
  snare: SNARE,
  sidestick: PLAIN,
  rimshot: PLAIN,
  crash: PLAIN,
  'tom-high': DRUM,
  'tom-mid': DRUM,
  'tom-low': DRUM,
  'tom-floor': DRUM,
  splash: PLAIN,
  china: PLAIN,
  cowbell: PLAIN,
  clap: PLAIN,
};
