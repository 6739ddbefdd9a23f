/**
 * Problems in what a person wrote: where, what was found, what would be right; the last two as facts, of which
 * the words room makes sentences.
 *
 * Conventions: lines and columns from 1; a column counts UTF-16 code units.
 */
import type { Fact } from '../fact.ts';

/** Problems of one file that are told at most: nobody mends more before looking again. */
export const MOST_PROBLEMS = 500;

/** A problem; `F` are the facts of the room that found it. */
export interface InputProblem<F extends Fact = Fact> {
  /** Stable name of the kind of problem, e.g. `unknown-key`. */
  readonly code: string;
  readonly severity: 'error' | 'warning';
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** Path of the field, e.g. `groove.ride`, or '' for the whole file. */
  readonly path: string;
  readonly found: F;
  readonly expected: F;
  /** A likely repair, or null. */
  readonly repair: F | null;
}
