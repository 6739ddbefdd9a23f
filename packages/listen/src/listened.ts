/** What goes into listening besides the take, and what comes out of it. */
import type { Bpm, Form, FullReport, Lesson } from '@shedbook/core';
import type { RefusalFact } from './fact.ts';

/** What was asked of the student. */
export interface Asked {
  readonly lesson: Lesson;
  /** Number of the exercise, or null for time only. */
  readonly exercise: number | null;
  readonly form: Form;
  /** Expected quarter notes a minute; the lesson's start tempo when left out. */
  readonly bpm?: Bpm;
}

/** A report, or why there is none. */
export type Listened =
  | { readonly report: FullReport; readonly refusal: null }
  | { readonly report: null; readonly refusal: RefusalFact };
