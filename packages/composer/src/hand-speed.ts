/**
 * How fast one limb has to go, and what it cannot do.
 *
 * Conventions: times in seconds at the goal tempo; speed in strokes a second.
 * Source: rhythmic movement of one hand is kept up at 5 to 7 strokes a second; the fastest hand that is known plays 10
 * (Fujii, Kudo, Ohtsuki & Oda 2009, Neuroscience Letters 459(2)). What is kept up is measured over taps in a row, so it
 * bounds three in a row; two come from one motion (a double stroke, common practice) and are bounded by the fastest
 * hand. A foot keeps up less (common practice; the share is ours).
 */
import type { Cell } from '@shedbook/core';
import { struckSlots } from '@shedbook/core';
import type { Ground } from './ground.ts';

/** The most strokes a second that one hand is published to keep up. */
export const PUBLISHED_HAND_RATE = 7;

/** The most strokes a second that the fastest hand is published to play: no two come faster. */
export const PUBLISHED_PAIR_RATE = 10;

/** How many times faster than what is kept up two strokes from one motion may come, and are graded against. */
const PAIR_SHARE = PUBLISHED_PAIR_RATE / PUBLISHED_HAND_RATE;

/** What a foot keeps up, as a share of what a hand does. */
export const FOOT_SHARE = 0.75;

/** Speed, as a share of the limit, up to which it costs nothing: sixteenths with one hand at 73 where the limit is 7. */
const EASY_SHARE = 0.7;

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

/** The shortest time from a stroke to the one `later` strokes after it; infinite where there are too few. */
function shortest(times: readonly number[], later: number): number {
  return Math.min(...times.slice(later).map((time, i) => time - (times[i] as number)));
}

/**
 * Whether a limb can play these strokes: no three in a row faster than it keeps up, no two faster than from one motion.
 * @param limit strokes a second that the limb keeps up
 */
export function isPlayable(times: readonly number[], limit: number): boolean {
  const isSlower = (seconds: number, strokes: number, speed: number) =>
    seconds >= strokes / speed - ROUNDING_SECONDS;
  return isSlower(shortest(times, 1), 1, limit * PAIR_SHARE) && isSlower(shortest(times, 2), 2, limit);
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

/** How fast a limb has to go, in strokes a second; 0 where it never has two strokes. */
export interface FastestStrokes {
  /** From one stroke to the next. */
  readonly two: number;
  /** Over three in a row. */
  readonly three: number;
}

/** The fastest strokes of the comping limb in a looped bar. */
export function fastestStrokes(ground: Ground, cells: readonly Cell[]): FastestStrokes {
  let start = 0;
  const times = cells.flatMap((cell, beat) => {
    const own = strokeTimes(ground, beat, cell).map((time) => start + time);
    start += ground.beatSeconds(beat);
    return own;
  });
  const looped = [...times, ...times.slice(0, 2).map((time) => time + start)];
  if (times.length < 2) return { two: 0, three: 0 };
  return { two: 1 / shortest(looped, 1), three: 2 / shortest(looped, 2) };
}
