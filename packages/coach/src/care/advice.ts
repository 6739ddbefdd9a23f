/**
 * What a student is told about a set level, and when a break is due.
 *
 * Conventions: levels in dBA at the ear; durations in seconds. A break after twenty-five minutes without one is
 * common practice, not a published limit.
 */
import {
  dailyAllowanceSeconds,
  dailyDose,
  type Exposure,
  formatDuration,
  type Listener,
  weeklyAllowanceSeconds,
  weeklyDose,
} from './exposure.ts';
import { CARE_WORDS } from './words.data.ts';

/** What is known of today and the last seven days, today included. */
export interface ListeningTime {
  /** Level that the student measured or set. */
  readonly levelDba: number;
  readonly listener: Listener;
  readonly today: readonly Exposure[];
  readonly week: readonly Exposure[];
}

/** What is left, and what is said about it. */
export interface HearingAdvice {
  readonly leftTodaySeconds: number;
  readonly leftThisWeekSeconds: number;
  readonly says: readonly string[];
}

function leftSeconds(allowance: number, dose: number): number {
  return Math.max(0, allowance * (1 - dose));
}

function sayLeft(today: number, week: number, level: number): string {
  const left = Math.min(today, week);
  if (left === 0) return `At ${level} dBA the recommended time is used up; play on a pad or without sound.`;
  const which = today <= week ? 'today' : 'this week';
  return `At ${level} dBA about ${formatDuration(left)} are left ${which}, ear protection not counted.`;
}

/** How long a student may go on at a level by NIOSH 98-126 (day) and WHO-ITU H.870 (week). */
export function adviseHearing(time: ListeningTime): HearingAdvice {
  const { levelDba, listener } = time;
  const today = leftSeconds(dailyAllowanceSeconds(levelDba), dailyDose(time.today));
  const week = leftSeconds(weeklyAllowanceSeconds(levelDba, listener), weeklyDose(time.week, listener));
  const says = [sayLeft(today, week, levelDba), CARE_WORDS.protect, CARE_WORDS.first];
  return { leftTodaySeconds: today, leftThisWeekSeconds: week, says };
}

const BREAK_AFTER_SECONDS = 25 * 60;

/** Something to say after playing without a break for so long, or null. */
export function remindOfBreak(secondsWithoutBreak: number): string | null {
  return secondsWithoutBreak >= BREAK_AFTER_SECONDS ? CARE_WORDS.rest : null;
}
