/**
 * How far from its place a stroke may lie before anyone could notice, and how much of that is allowed.
 *
 * Conventions: milliseconds and seconds as named.
 * Source: Friberg & Sundberg 1995, J. Acoust. Soc. Am. 98(5): displacement of one tone in an isochronous sequence
 * is just noticed at about 6 ms for intervals under about 240 ms and at 2.5 % of the interval above
 * (100–1000 ms tested; training made no difference).
 */
import type { CleanRule } from './level.data.ts';

const LEAST_MS = 6;
const SHARE_OF_INTERVAL = 0.025;

/**
 * Just noticeable displacement, in milliseconds, of one event in a sequence with the given interval in seconds.
 * @example justNoticeableMs(1) // 25
 */
export function justNoticeableMs(intervalSeconds: number): number {
  return Math.max(LEAST_MS, SHARE_OF_INTERVAL * intervalSeconds * 1000);
}

/** Lateness, in milliseconds, that a level allows a stroke, alone or together with another limb. */
export function allowedMs(rule: CleanRule, intervalSeconds: number, together: boolean): number {
  const alone = rule.displacements * justNoticeableMs(intervalSeconds);
  return together ? Math.min(alone, rule.togetherMs) : alone;
}
