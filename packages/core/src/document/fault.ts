/** Faults found while a lesson is given its meaning, before they are located in the text. */
import type { LessonFact } from '../lesson/lesson-fact.ts';
import type { FieldPath } from './field-path.ts';

/** What is wrong with a field. */
export interface Fault {
  readonly code: string;
  readonly path: FieldPath;
  readonly found: LessonFact;
  readonly expected: LessonFact;
  readonly repair?: LessonFact | null;
  /** Index of the character of the value that it is about. */
  readonly offset?: number;
  /** Whether it is about the key rather than the value. */
  readonly onKey?: boolean;
  readonly severity?: 'error' | 'warning';
}

/** Takes a fault; reading goes on, so that all are found at once. */
export type Report = (fault: Fault) => void;
