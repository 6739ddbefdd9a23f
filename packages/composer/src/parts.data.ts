/**
 * The parts of difficulty: keys of `compose.weights`, in the order in which they are explained.
 *
 * Conventions: of `alone`, `foot`, `lead`, `offBeatness`, `keith` and `density` strokes are counted, of `silence`
 * bars, of `memory` beats, of `change` and `dynamics` changes; `wnbd` and `lhl` are measures of syncopation, `pulse` is evidence
 * against it; `unison` counts moments that limbs of the exercise share, `interlock` their hand-overs; and three strokes at the limit of a hand are 1 of `speed`; of `switch` changes of company are counted.
 */
import type { ComposeWeights } from '@shedbook/core';

/** Name of a part: a key of `compose.weights`. */
export type PartName = keyof ComposeWeights;

/** Every part, in the order in which they are explained. */
export const PARTS = [
  'alone',
  'foot',
  'lead',
  'switch',
  'unison',
  'interlock',
  'silence',
  'wnbd',
  'lhl',
  'offBeatness',
  'keith',
  'pulse',
  'density',
  'memory',
  'change',
  'speed',
  'dynamics',
] as const satisfies readonly PartName[];
