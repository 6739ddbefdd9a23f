/**
 * Today's plan: what to play, in order, for how long, and why.
 *
 * Conventions: whole minutes; tempi in quarter notes a minute. Plain data, so that it can be stored and sent.
 */
import { type Meter, meter, type PracticeLog, sectionOf } from '@shedbook/core';
import type { PracticePart } from '../apart/apart.ts';
import type { PlanNoteFact, PlanReasonFact, PlanTitleFact } from '../fact.ts';
import type { ShelfLesson } from '../mastery/identity.ts';

/** What a teacher asked a student to practise. */
export interface Assignment {
  readonly lesson: string;
  /** Lasting name of the exercise. */
  readonly exercise: string;
  /** Pinned: stands in every plan until the teacher takes it out. */
  readonly pinned: boolean;
  readonly note: string | null;
  /** The tempo that it is set for, in quarter notes a minute; none where the lesson's own goal holds. */
  readonly toBpm?: number | null;
  /** The student's own day for which it is set, ISO 8601 without a time. */
  readonly by?: string | null;
}

/** What a plan is made from. */
export interface PlanTask {
  readonly shelf: readonly ShelfLesson[];
  /** What was played today changes nothing of today's plan: it is ticked off. */
  readonly log: PracticeLog;
  /** A moment; the student's own day decides what is due. */
  readonly now: string;
  /** Whole minutes that the student has, breaks included. */
  readonly minutes: number;
  readonly assignments: readonly Assignment[];
  /** Whether nothing is proposed beside what the teacher set. */
  readonly isSilent?: boolean;
  readonly seed: number | string;
  /** Whether due exercises take turns (true when left out) or stand one after the other. */
  readonly interleave?: boolean;
}

/** Why something is in a plan. */
export type PlanKind =
  | 'warm-up'
  | 'assigned'
  | 'new'
  | 'review'
  /** A part of what is stuck. */
  | 'apart'
  | 'once more'
  | 'time'
  /** Whatever the student likes, over the groove. */
  | 'free'
  | 'break';

/** One thing to do. */
export interface PlanItem {
  readonly kind: PlanKind;
  /** Null for a break. */
  readonly lesson: string | null;
  /** Lasting name of the exercise, or null for the groove alone and for a break. */
  readonly exercise: string | null;
  /** What of the exercise is played; null: all of it. */
  readonly part: PracticePart | null;
  /** Its number on the sheet today. */
  readonly number: number | null;
  readonly title: PlanTitleFact;
  readonly minutes: number;
  /** Where on the ladder to begin, and its goal. */
  readonly tempo: { readonly fromBpm: number; readonly goalBpm: number } | null;
  readonly reason: PlanReasonFact;
}

/** The meter that an item is counted in: that of its section on the shelf. */
export function meterOfItem(
  { lesson, number }: Pick<PlanItem, 'lesson' | 'number'>,
  shelf: readonly ShelfLesson[],
): Meter {
  const found = shelf.find(({ id }) => id === lesson);
  return found ? sectionOf(found.lesson, number).meter : meter('4/4');
}

/** A day's plan. */
export interface PracticePlan {
  /** The student's day, `2026-11-25`. */
  readonly day: string;
  readonly seed: number | string;
  /** Minutes that the items take: never more than the student has. */
  readonly minutes: number;
  readonly items: readonly PlanItem[];
  /** What was left out and why. */
  readonly notes: readonly PlanNoteFact[];
}
