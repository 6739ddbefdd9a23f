/**
 * How long a set level may go on, and when a break is due. What is said of it lies in `words`.
 *
 * Conventions: levels in dBA at the ear; durations in seconds. A break after twenty-five minutes without one is
 * common practice, not a published limit.
 */
import {
  dailyAllowanceSeconds,
  dailyDose,
  type Exposure,
  type Listener,
  weeklyAllowanceSeconds,
  weeklyDose,
} from './exposure.ts';

/** What is known of today and the last seven days, today included. */
export interface ListeningTime {
  /** Level that the student measured or set. */
  readonly levelDba: number;
  readonly listener: Listener;
  readonly today: readonly Exposure[];
  readonly week: readonly Exposure[];
}

/** What is left. */
export interface HearingAdvice {
  readonly leftTodaySeconds: number;
  readonly leftThisWeekSeconds: number;
}

function leftSeconds(allowance: number, dose: number): number {
  return Math.max(0, allowance * (1 - dose));
}

/** How long a student may go on at a level by NIOSH 98-126 (day) and WHO-ITU H.870 (week). */
export function adviseHearing(time: ListeningTime): HearingAdvice {
  const { levelDba, listener } = time;
  const today = leftSeconds(dailyAllowanceSeconds(levelDba), dailyDose(time.today));
  const week = leftSeconds(weeklyAllowanceSeconds(levelDba, listener), weeklyDose(time.week, listener));
  return { leftTodaySeconds: today, leftThisWeekSeconds: week };
}

const BREAK_AFTER_SECONDS = 25 * 60;

/** Whether a break is due after playing without one for so long. */
export function isBreakDue(secondsWithoutBreak: number): boolean {
  return secondsWithoutBreak >= BREAK_AFTER_SECONDS;
}
