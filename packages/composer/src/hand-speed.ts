/**
 * How fast one limb has to go, and what it cannot do.
 *
 * Conventions: times in seconds at the goal tempo; speed in strokes a second.
 * Source: one hand keeps up 5 to 7 strokes a second (Fujii, Kudo, Ohtsuki & Oda 2009, Neuroscience Letters 459(2)). Two
 * from one motion of the hand may come faster, but no page asks for them unless its lesson does; a foot keeps up less
 * (common practice; the shares are ours).
 */
import type { Cell } from '@shedbook/core';
import { struckSlots } from '@shedbook/core';
import type { Ground } from './ground.ts';

/** Two strokes from one motion are graded against a speed this many times what is kept up. */
const PAIR_SHARE = 1.5;

/** What a foot keeps up, as a share of what a hand does. */
export const FOOT_SHARE = 0.75;

/** Speed, as a share of the limit, up to which it costs nothing: sixteenths with one hand at 73 where the limit is 7. */
const EASY_SHARE = 0.7;

/** The most strokes a second that one hand is published to keep up; faster pairs are named. */
export const PUBLISHED_HAND_RATE = 7;

const ROUNDING_SECONDS = 1e-9;

/** Strokes a second that the comping limb can keep up. */
export function speedLimit(ground: Ground, handSpeed: number): number {
  return ground.limb === 'lead foot' || ground.limb === 'other foot' ? handSpeed * FOOT_SHARE : handSpeed;
}

/** Times of the strokes of a cell on a beat, from the start of that beat. */
export function strokeTimes(ground: Ground, beat: number, cell: Cell): readonly number[] {
  const length = ground.beatSeconds(beat);
  return struckSlots(cell).map((slot) => ground.phase(beat, slot, cell.marks.length) * length);
}

function gapsOf(times: readonly number[]): readonly number[] {
  return times.slice(1).map((time, i) => time - (times[i] as number));
}

/** Whether a limb can play these strokes: no two faster than a hand keeps up, no three in a row faster than the limb. */
export function isPlayable(times: readonly number[], limit: number, handSpeed: number): boolean {
  const gaps = gapsOf(times);
  const tooFast = (gap: number, speed: number) => gap < 1 / speed - ROUNDING_SECONDS;
  return gaps.every(
    (gap, i) =>
      !tooFast(gap, handSpeed) && !(i > 0 && tooFast(gap, limit) && tooFast(gaps[i - 1] as number, limit)),
  );
}

/** What a gap costs against a speed: 0 while it is easy, 1 at the speed, more above. */
function gapCost(gapSeconds: number, speed: number): number {
  return Math.max(0, (1 / gapSeconds / speed - EASY_SHARE) / (1 - EASY_SHARE));
}

/**
 * What strokes in a row cost one limb: each two against the speed of two from one motion, each three against the
 * speed that the limb can keep up.
 */
export function speedCost(times: readonly number[], limit: number): number {
  const gaps = gapsOf(times);
  const pairs = gaps.map((gap) => gapCost(gap, limit * PAIR_SHARE));
  const runs = gaps.slice(1).map((gap, i) => gapCost(Math.max(gap, gaps[i] as number), limit));
  return [...pairs, ...runs].reduce((sum, each) => sum + each, 0);
}

/** The fastest two strokes of the comping limb in a looped bar, in strokes a second; 0 with fewer than two. */
export function fastestPair(ground: Ground, cells: readonly Cell[]): number {
  let start = 0;
  const times = cells.flatMap((cell, beat) => {
    const own = strokeTimes(ground, beat, cell).map((time) => start + time);
    start += ground.beatSeconds(beat);
    return own;
  });
  const looped = [...times, ...times.slice(0, 1).map((time) => time + start)];
  return times.length < 2 ? 0 : 1 / Math.min(...gapsOf(looped));
}
