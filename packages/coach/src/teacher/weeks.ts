/**
 * What a student did in some weeks: days and minutes of practice, and what the teacher passed.
 *
 * Conventions: a week is seven of the student's own days; the last one ends today. A day counts where anything was
 * played; a pass is no playing.
 */
import type { PracticeLog } from '@shedbook/core';
import { identityOf } from '../mastery/identity.ts';
import { findExercise, type ShelfExercise } from '../mastery/shelf.ts';
import { formatDay, momentOf } from '../time/moment.ts';
import type { StudentFile } from './summary.ts';

/** Seven days. */
export interface PracticeWeek {
  /** Its first day and its last, ISO 8601 without a time. */
  readonly from: string;
  readonly to: string;
  /** Days on which anything was played. */
  readonly days: number;
  readonly minutes: number;
}

/** Something that the teacher passed. */
export interface Passed {
  readonly exercise: ShelfExercise;
  /** Quarter notes a minute. */
  readonly bpm: number;
  /** ISO 8601, without a time. */
  readonly day: string;
}

const DAYS_A_WEEK = 7;

/** The last weeks, the earliest first. */
export function practiceWeeks({ entries }: PracticeLog, now: string, count: number): readonly PracticeWeek[] {
  const today = momentOf(now).day;
  const played = entries
    .filter(({ heardBy }) => heardBy !== 'teacher')
    .map(({ startedAt, durationSeconds }) => ({ day: momentOf(startedAt).day, durationSeconds }));
  return Array.from({ length: count }, (_, index): PracticeWeek => {
    const to = today - (count - 1 - index) * DAYS_A_WEEK;
    const from = to - DAYS_A_WEEK + 1;
    const own = played.filter(({ day }) => day >= from && day <= to);
    const seconds = own.reduce((sum, each) => sum + each.durationSeconds, 0);
    const days = new Set(own.map(({ day }) => day)).size;
    return { from: formatDay(from), to: formatDay(to), days, minutes: Math.round(seconds / 60) };
  });
}

/** What the teacher passed from a day on, each exercise once with the fastest tempo, in the order of the last pass. */
export function passedSince(
  { shelf, log }: Pick<StudentFile, 'log' | 'shelf'>,
  from: string,
): readonly Passed[] {
  const { itemOf } = identityOf(shelf);
  const passed = new Map<string, Passed>();
  for (const { heardBy, startedAt, lesson, exercise: key, loops } of log.entries) {
    const day = formatDay(momentOf(startedAt).day);
    const exercise = key === null ? undefined : findExercise(shelf, lesson, key);
    if (heardBy !== 'teacher' || day < from || !exercise) continue;
    const item = itemOf(lesson, key);
    const bpm = Math.max(passed.get(item)?.bpm ?? 0, ...loops.map((loop) => loop.bpm));
    passed.delete(item);
    passed.set(item, { exercise, bpm, day });
  }
  return [...passed.values()];
}
