/**
 * Where each voice stands on the five-line staff, and with which head.
 *
 * Conventions: display step and octave are read as in a treble clef, so C5 is the third space; `head` is a
 * MusicXML notehead.
 * Positions and heads are core's maps, with their sources.
 */
import { HEAD_KINDS, type HeadKind, STAFF_POSITIONS, VOICES, type Voice } from '@shedbook/core';

/** A place on the staff and the head that stands there. */
export interface StaffPlace {
  readonly step: 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G';
  readonly octave: number;
  readonly head: HeadKind;
}

const STEPS = ['C', 'D', 'E', 'F', 'G', 'A', 'B'] as const;
/** The bottom line, E4, in steps from C0. */
const BOTTOM_LINE = 4 * STEPS.length + STEPS.indexOf('E');

function placeOf(voice: Voice): StaffPlace {
  const steps = BOTTOM_LINE + STAFF_POSITIONS[voice];
  const step = STEPS[steps % STEPS.length] as StaffPlace['step'];
  return { step, octave: Math.floor(steps / STEPS.length), head: HEAD_KINDS[voice] };
}

/** The place of every voice; a place with its head belongs to one voice only. */
export const STAFF_PLACES = Object.fromEntries(VOICES.map((voice) => [voice, placeOf(voice)])) as Readonly<
  Record<Voice, StaffPlace>
>;
