/**
 * Which marks each voice knows, and what they ask of it: a way of striking, or another voice of the same surface. Every
 * voice knows a plain stroke, an accent and a ghost note beside these.
 *
 * Conventions: marks by their small letters; null where a voice cannot be played so.
 * Source: common practice of text drum tablature; bell on the ride and splash by the foot are read from the same
 * letters as buzz and open.
 */
import type { Letter } from '../rhythm/cell.ts';
import type { Articulation, Voice } from './voice.ts';

/** A mark that not every voice knows. */
export type SpecialLetter = Exclude<Letter, 'x' | 'g'>;

type Row = Readonly<Record<SpecialLetter, Voice | Exclude<Articulation, 'normal'> | null>>;

/** The table. */
export const MARKED = {
  ride: { f: null, d: null, b: 'bell', o: null, s: null, r: null },
  hihat: { f: null, d: null, b: null, o: 'hihat-open', s: null, r: null },
  'hihat-open': { f: null, d: null, b: null, o: 'hihat-open', s: null, r: null },
  'hihat-foot': { f: null, d: null, b: null, o: 'splash', s: null, r: null },
  bass: { f: null, d: null, b: null, o: null, s: null, r: null },
  snare: { f: 'flam', d: 'drag', b: 'buzz', o: null, s: 'sidestick', r: 'rimshot' },
  sidestick: { f: null, d: null, b: null, o: null, s: null, r: null },
  rimshot: { f: null, d: null, b: null, o: null, s: null, r: null },
  crash: { f: null, d: null, b: null, o: null, s: null, r: null },
  'tom-high': { f: 'flam', d: 'drag', b: 'buzz', o: null, s: null, r: null },
  'tom-mid': { f: 'flam', d: 'drag', b: 'buzz', o: null, s: null, r: null },
  'tom-low': { f: 'flam', d: 'drag', b: 'buzz', o: null, s: null, r: null },
} as const satisfies Readonly<Record<Voice, Row>>;
