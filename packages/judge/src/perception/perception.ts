/**
 * What is just noticed, and what a level allows of it, for one place, tempo or balance: the loop on the practice page
 * and the whole take are measured by the same functions.
 *
 * Conventions: milliseconds, decibels, percent, beats a minute as named; positive is late, fast, loud.
 */
import type { Allowance } from '../level/levels.data.ts';
import { DISPLACEMENT, TEMPO_PERCENT } from './perception.data.ts';

/**
 * Displacement of one stroke among others that is just noticed, in ms, for the interval to its neighbours in seconds.
 * @source Friberg and Sundberg 1995, see `perception.data.ts`.
 * @example justNoticedMs(1) // 25
 */
export function justNoticedMs(intervalSeconds: number): number {
  return Math.max(DISPLACEMENT.leastMs, DISPLACEMENT.shareOfInterval * 1000 * intervalSeconds);
}

/** Lateness, in ms, that a level allows a stroke: alone, or together with another limb. */
export function allowedMs(allowance: Allowance, intervalSeconds: number, together = false): number {
  const alone = allowance.displacements * justNoticedMs(intervalSeconds);
  return together ? Math.min(alone, allowance.togetherMs) : alone;
}

/**
 * Spread of one limb's strokes about the student's own pulse that a level allows, in ms: a share of the beat, since
 * people's own spread grows with the interval.
 */
export function allowedSpreadMs({ spreadShare, spreadMs }: Allowance, beatSeconds: number): number {
  return Math.max(spreadMs, spreadShare * 1000 * beatSeconds);
}

/**
 * How much faster one tempo is than another, in percent; negative is slower.
 * @example tempoChangePercent(90, 100) // -10
 */
export function tempoChangePercent(bpm: number, fromBpm: number): number {
  return (bpm / fromBpm - 1) * 100;
}

/** Change of tempo that a level allows, in percent. */
export function allowedTempoPercent(allowance: Allowance): number {
  return allowance.tempi * TEMPO_PERCENT;
}

/**
 * What one microphone makes of a voice's level, by where it stands and by the errors of the ear, in dB: no student is
 * held to account for it (our choice).
 */
const MICROPHONE_DB = 7;

/** How far a voice's level may be from the lesson's, in dB, in a take of a kind. */
export function allowedBalanceDb(allowance: Allowance, kind: 'audio' | 'midi'): number {
  return allowance.balanceDb + (kind === 'audio' ? MICROPHONE_DB : 0);
}
