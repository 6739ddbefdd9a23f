/** What goes into listening besides the take, and what comes out of it. */
import type { Bpm, Form, FullReport, Lesson, Voice } from '@shedbook/core';
import type { RefusalFact } from './fact.ts';

/** What was asked of the student. */
export interface Asked {
  readonly lesson: Lesson;
  /** Number of the exercise, or null for time only. */
  readonly exercise: number | null;
  readonly form: Form;
  /** Expected quarter notes a minute; the lesson's start tempo when left out. */
  readonly bpm?: Bpm;
  /**
   * The voices that this student plays; all that are written when left out or empty. The others are not listened for, and
   * where they sound all the same they are nobody's.
   */
  readonly plays?: readonly Voice[];
}

/** A report, or why there is none. */
export type Listened =
  | { readonly report: FullReport; readonly refusal: null }
  | { readonly report: null; readonly refusal: RefusalFact };
