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
 * A voice's level told by one microphone is good to about this many dB, which no student is held to account for (our
 * choice, from the errors of `listen` on takes of known truth).
 */
const MICROPHONE_DB = 4;

/** How far a voice's level may be from the lesson's, in dB, in a take of a kind. */
export function allowedBalanceDb(allowance: Allowance, kind: 'audio' | 'midi'): number {
  return allowance.balanceDb + (kind === 'audio' ? MICROPHONE_DB : 0);
}
