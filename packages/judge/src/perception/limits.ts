/** Thresholds of perception as numbers for one place or tempo. */
import { DISPLACEMENT } from './limits.data.ts';

/**
 * Displacement of one stroke among others that is just noticed, in ms, for the interval to its neighbours in
 * seconds.
 * @source Friberg and Sundberg 1995, see `limits.data.ts`.
 * @example justNoticedMs(1) // 25
 */
export function justNoticedMs(intervalSeconds: number): number {
  return Math.max(DISPLACEMENT.leastMs, DISPLACEMENT.shareOfInterval * 1000 * intervalSeconds);
}
