/**
 * How long a student has played today and in the last seven days, taken from the log.
 *
 * Conventions: days by the student's own calendar; the level is the one that the student measured or set, the same
 * for all of it.
 */
import type { PracticeLog } from '@shedbook/core';
import { momentOf } from '../time/moment.ts';
import type { ListeningTime } from './advice.ts';
import type { Exposure, Listener } from './exposure.ts';

const DAYS_A_WEEK = 7;

/** Whose ears, at which level. */
export interface EarSetting {
  /** In dBA at the ear. */
  readonly levelDba: number;
  readonly listener: Listener;
}

/** What the log says of today and of the last seven days, at one level. */
export function listeningTimeOf(log: PracticeLog, now: string, ears: EarSetting): ListeningTime {
  const today = momentOf(now).day;
  const since = (first: number): readonly Exposure[] =>
    log.entries
      .filter(({ startedAt }) => {
        const { day } = momentOf(startedAt);
        return day >= first && day <= today;
      })
      .map(({ durationSeconds }) => ({ levelDba: ears.levelDba, durationSeconds }));
  return { ...ears, today: since(today), week: since(today - DAYS_A_WEEK + 1) };
}
