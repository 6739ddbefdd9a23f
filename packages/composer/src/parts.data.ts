/**
 * The parts of difficulty: how each is named to a teacher, and what one of it is.
 *
 * Conventions: in the order in which they are explained. Keys are those of `compose.weights`.
 */
import type { ComposeWeights } from '@shedbook/core';

/** Name of a part: a key of `compose.weights`. */
export type PartName = keyof ComposeWeights;

/** How a part is named to a teacher. */
export interface PartFacts {
  readonly part: PartName;
  /** What is counted, for people: after a number, one and several. */
  readonly one: string;
  readonly several: string;
}

/** Every part, in the order in which they are explained. */
export const PARTS: readonly PartFacts[] = [
  { part: 'alone', one: 'stroke alone', several: 'strokes alone' },
  { part: 'foot', one: 'stroke with a foot only', several: 'strokes with a foot only' },
  { part: 'lead', one: 'stroke with the lead hand', several: 'strokes with the lead hand' },
  { part: 'silence', one: 'silent 1', several: 'silent 1s' },
  {
    part: 'wnbd',
    one: 'of syncopation (note-to-beat distance)',
    several: 'of syncopation (note-to-beat distance)',
  },
  {
    part: 'lhl',
    one: 'of syncopation (rests on strong places)',
    several: 'of syncopation (rests on strong places)',
  },
  { part: 'offBeatness', one: 'stroke far off the beat', several: 'strokes far off the beat' },
  {
    part: 'keith',
    one: 'stroke that starts too early for its length',
    several: 'strokes that start too early for their length',
  },
  { part: 'pulse', one: 'of evidence against the pulse', several: 'of evidence against the pulse' },
  { part: 'density', one: 'stroke in all', several: 'strokes in all' },
  { part: 'change', one: 'change of cell', several: 'changes of cell' },
  {
    part: 'speed',
    one: 'of hand speed (three strokes at the limit are 1)',
    several: 'of hand speed (three strokes at the limit are 1)',
  },
  { part: 'dynamics', one: 'change of dynamics', several: 'changes of dynamics' },
];
