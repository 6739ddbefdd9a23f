/** What goes into listening besides the take, and what comes out of it. */
import type { Bpm, Form, FullReport, Lesson } from '@shedbook/core';

/** What was asked of the student. */
export interface Asked {
  readonly lesson: Lesson;
  /** Number of the exercise, or null for time only. */
  readonly exercise: number | null;
  readonly form: Form;
  /** Expected quarter notes a minute; the lesson's start tempo when left out. */
  readonly bpm?: Bpm;
}

/** Why there is no report. */
export interface Refusal {
  readonly code: 'empty' | 'silent' | 'no-drums' | 'wrong-exercise';
  /** One or two sentences for a person. */
  readonly message: string;
}

/** A report, or why there is none. */
export type Listened =
  | { readonly report: FullReport; readonly refusal: null }
  | { readonly report: null; readonly refusal: Refusal };
