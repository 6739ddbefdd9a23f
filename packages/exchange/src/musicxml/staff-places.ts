/**
 * Where each voice stands on the five-line staff, and with which head.
 *
 * Conventions: display step and octave are read as in a treble clef, so C5 is the third space; `head` is a
 * MusicXML notehead.
 * Sources: MusicXML 4.0 tutorial on percussion for the reading of positions, bass drum, snare and hi-hat; common
 * practice (N. Weinberg, Percussive Notes, June 1994, and what follows it) for the rest. No one map is binding.
 */
import type { Voice } from '@shedbook/core';

/** A place on the staff and the head that stands there. */
export interface StaffPlace {
  readonly step: 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G';
  readonly octave: number;
  readonly head: 'normal' | 'x' | 'slashed';
}

/** The place of every voice; a place with its head belongs to one voice only. */
export const STAFF_PLACES: Readonly<Record<Voice, StaffPlace>> = {
  ride: { step: 'F', octave: 5, head: 'x' },
  hihat: { step: 'G', octave: 5, head: 'x' },
  'hihat-open': { step: 'G', octave: 5, head: 'x' },
  'hihat-foot': { step: 'D', octave: 4, head: 'x' },
  bass: { step: 'F', octave: 4, head: 'normal' },
  snare: { step: 'C', octave: 5, head: 'normal' },
  sidestick: { step: 'C', octave: 5, head: 'x' },
  rimshot: { step: 'C', octave: 5, head: 'slashed' },
  crash: { step: 'A', octave: 5, head: 'x' },
  'tom-high': { step: 'E', octave: 5, head: 'normal' },
  'tom-mid': { step: 'D', octave: 5, head: 'normal' },
  'tom-low': { step: 'A', octave: 4, head: 'normal' },
};
