/**
 * The note value that a slot of a beat is written with.
 *
 * Source: common practice: a tuplet takes the value of the next coarser plain division (five or seven in the time of
 * four), a dotted beat divides in threes plainly; nothing shorter than a 64th is written.
 */
import { SUBDIVISIONS, type Subdivision } from './cell.ts';
import type { Fraction } from './fraction.ts';

/** The shortest value that is written, as parts of a whole note. */
const SHORTEST = 64;

/** How the slots of a beat are written. */
export interface SlotValue {
  /** The value of one slot, as parts of a whole note: 16 is a sixteenth. */
  readonly base: number;
  /** `actual` in the time of `normal`, both numbers of notes, or null. */
  readonly tuplet: { readonly actual: number; readonly normal: number } | null;
}

function largestPowerOfTwoIn(n: number): number {
  return 2 ** Math.floor(Math.log2(n));
}

/** Whether a whole number is 1, 2, 4, 8, … */
export function isPowerOfTwo(n: number): boolean {
  return largestPowerOfTwoIn(n) === n;
}

/** The value of one slot, of `slots` equal parts of a beat: one of 1/2^k divides in twos, a dotted one of 3/2^k in threes. */
export function slotValue(beat: Fraction, slots: number): SlotValue {
  if (beat.num === 1) {
    const normal = largestPowerOfTwoIn(slots);
    return { base: beat.den * normal, tuplet: normal === slots ? null : { actual: slots, normal } };
  }
  if (slots % 3 === 0 && isPowerOfTwo(slots / 3)) return { base: (beat.den * slots) / 3, tuplet: null };
  const normal = (3 * largestPowerOfTwoIn(slots)) / 2;
  return { base: (beat.den * normal) / 3, tuplet: { actual: slots, normal } };
}

/** How many slots can be written in each of the beats, with no value shorter than a 64th. */
export function writableSlots(beats: readonly Fraction[]): readonly Subdivision[] {
  return SUBDIVISIONS.filter((slots) => beats.every((beat) => slotValue(beat, slots).base <= SHORTEST));
}
