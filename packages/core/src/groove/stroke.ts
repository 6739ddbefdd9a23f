/**
 * Strokes: what is played, by which limb, when and how loud. Everything that sounds, is printed or is measured
 * comes from these.
 *
 * Conventions: `timeSeconds` is performed time from the start of the rendering (count-in included); `at` is
 * score time in whole notes from the first bar after the count-in, before any feel (negative in the count-in).
 * `levelDb` is relative to a plain stroke of the lead voice, which is 0 dB.
 */
import type { Articulation, Limb, SoundingVoice } from '../kit/voice.ts';
import type { How } from '../lesson/how.ts';
import type { Mark, Subdivision } from '../rhythm/cell.ts';
import type { Fraction } from '../rhythm/fraction.ts';
import type { LeadDb, Seconds } from '../units.ts';

/** A written place, counted from 1 as people do. Count-in bars are 0, −1, … */
export interface WrittenPlace {
  readonly bar: number;
  readonly beat: number;
  readonly slot: number;
}

/** The hand of a written sticking: right, left, both, or null where none is written. */
export type Sticking = 'R' | 'L' | 'B' | null;

/** Why a stroke is there; `click` is one that the form asks for. */
export type StrokeRole = 'groove' | 'pattern' | 'ending' | 'count-in' | 'click';

/** Whether a stroke begins at a moment that can be heard: a brush that is drawn over the head does not. */
export function hasOnset({ articulation }: Pick<Stroke, 'articulation'>): boolean {
  return articulation !== 'sweep';
}

/** One stroke of one limb. */
export interface Stroke {
  readonly voice: SoundingVoice;
  readonly articulation: Articulation;
  /** Null for clicks. */
  readonly limb: Limb | null;
  readonly role: StrokeRole;
  readonly mark: Mark;
  readonly written: WrittenPlace;
  /** Slots in the subdivision of the beat it is written in. */
  readonly slots: Subdivision;
  readonly at: Fraction;
  readonly timeSeconds: Seconds;
  readonly levelDb: LeadDb;
  readonly sticking: Sticking;
  /** From its beginning to its end, where it is held: a long roll, a sweep that goes on; left out where it ends by itself. */
  readonly heldSeconds?: Seconds;
  /** How it is played, where the lesson says so. */
  readonly how?: How;
}
