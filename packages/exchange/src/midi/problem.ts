/**
 * Problems in a binary file: at which byte, what was found there, what would be right.
 *
 * Conventions: offsets count bytes from 0, the start of the file; a problem of the whole file has none.
 */
import type { MidiFact } from './midi-fact.ts';

/** A problem at a byte. */
export interface ByteProblem {
  /** Stable name of the kind of problem, e.g. `midi-truncated`. */
  readonly code: string;
  readonly severity: 'error' | 'warning';
  /** Offset of the byte it is about, or null where it is about the file as a whole. */
  readonly offset: number | null;
  readonly found: MidiFact;
  readonly expected: MidiFact;
  /** A likely repair, or null. */
  readonly repair: MidiFact | null;
}
