/**
 * Where each voice stands on the five-line staff, and with which head.
 *
 * Conventions: display step and octave are read as in a treble clef, so C5 is the third space; `head` is a
 * MusicXML notehead.
 * Sources: positions are core's map; heads by common practice (N. Weinberg, Percussive Notes, June 1994, and what
 * follows it).
 */
import { STAFF_POSITIONS, VOICES, type Voice } from '@shedbook/core';

/** A place on the staff and the head that stands there. */
export interface StaffPlace {
  readonly step: 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G';
  readonly octave: number;
  readonly head: 'normal' | 'x' | 'slashed';
}

const HEADS: Readonly<Record<Voice, StaffPlace['head']>> = {
  ride: 'x',
  hihat: 'x',
  'hihat-open': 'x',
  'hihat-foot': 'x',
  bass: 'normal',
  snare: 'normal',
  sidestick: 'x',
  rimshot: 'slashed',
  crash: 'x',
  'tom-high': 'normal',
  'tom-mid': 'normal',
  'tom-low': 'normal',
};

const STEPS = ['C', 'D', 'E', 'F', 'G', 'A', 'B'] as const;
/** The bottom line, E4, in steps from C0. */
const BOTTOM_LINE = 4 * STEPS.length + STEPS.indexOf('E');

function placeOf(voice: Voice): StaffPlace {
  const steps = BOTTOM_LINE + STAFF_POSITIONS[voice];
  const step = STEPS[steps % STEPS.length] as StaffPlace['step'];
  return { step, octave: Math.floor(steps / STEPS.length), head: HEADS[voice] };
}

/** The place of every voice; a place with its head belongs to one voice only. */
export const STAFF_PLACES = Object.fromEntries(VOICES.map((voice) => [voice, placeOf(voice)])) as Readonly<
  Record<Voice, StaffPlace>
>;
