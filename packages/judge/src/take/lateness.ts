/**
 * How late the whole performance is, before any stroke of it is: the lateness at which most of what was due is heard,
 * and how it grows where the student leaves the click.
 *
 * Conventions: seconds; positive is late. Nobody's latency is known for sure, and trained players are themselves ahead
 * of a click, so this is found first and no fault by itself.
 */
import { median } from '@shedbook/signal';
import type { Due } from './due.ts';
import { type LatenessAt, matchStrokes, surfaceOf } from './match.ts';
import type { PlayedBar, PlayedStroke } from './played.ts';

/** A lateness that may change through a round. */
export interface Lateness {
  /** At the start of the first bar. */
  readonly seconds: number;
  /** How many seconds it grows a second. */
  readonly slope: number;
}

/** Farthest that a performance is looked for from the click, and that it may be in a take that has a pulse of its own. */
const FARTHEST_SECONDS = { click: 0.32, own: 0.06 } as const;
/** No farther than this share of a beat, or the next beat would be as near. */
const FARTHEST_BEATS = 0.42;
const STEP_SECONDS = 0.01;
/** A stroke this far from where it is looked for speaks for nothing. */
const NEAR_SECONDS = 0.05;
/** By how much a lateness as far as it can be counts less. */
const FAR_COST = 0.15;
/** Slopes that are tried, and what the steepest counts less. */
const SLOPES = [0, 0.005, -0.005, 0.01, -0.01, 0.015, -0.015, 0.02, -0.02, 0.03, -0.03, 0.04, -0.04];
const SLOPE_COST = 2.5;

function bySurface(strokes: readonly PlayedStroke[]): ReadonlyMap<string, readonly number[]> {
  const times = new Map<string, number[]>();
  for (const { voice, seconds } of strokes) {
    const surface = surfaceOf(voice);
    times.set(surface, [...(times.get(surface) ?? []), seconds]);
  }
  return times;
}

/** Distance from a time to the nearest of some times in order. */
function nearestTo(times: readonly number[], seconds: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((times[middle] as number) < seconds) low = middle + 1;
    else high = middle;
  }
  const after = Math.abs((times[low] ?? Number.POSITIVE_INFINITY) - seconds);
  return Math.min(after, Math.abs((times[low - 1] ?? Number.NEGATIVE_INFINITY) - seconds));
}

/** With so much of what was due heard at one lateness, nobody leaves the click. */
const STEADY_SHARE = 0.6;

interface Sought {
  readonly due: readonly Due[];
  readonly times: ReadonlyMap<string, readonly number[]>;
  readonly start: number;
  readonly farthest: number;
}

function heardAt({ due, times, start, farthest }: Sought, { seconds, slope }: Lateness): number {
  let sum = 0;
  for (const one of due) {
    const at = one.seconds + seconds + slope * (one.seconds - start);
    const away = nearestTo(times.get(surfaceOf(one.voice)) ?? [], at);
    sum += Math.max(0, 1 - away / NEAR_SECONDS);
  }
  return sum * (1 - (FAR_COST * Math.abs(seconds)) / farthest - SLOPE_COST * Math.abs(slope));
}

function search(sought: Sought, slopes: readonly number[]): Lateness {
  let best: Lateness = { seconds: 0, slope: 0 };
  let most = heardAt(sought, best);
  for (const slope of slopes) {
    for (let seconds = -sought.farthest; seconds <= sought.farthest; seconds += STEP_SECONDS) {
      const heard = heardAt(sought, { seconds, slope });
      if (heard <= most + 1e-9) continue;
      most = heard;
      best = { seconds, slope };
    }
  }
  return best;
}

/** Adds what the strokes that were found there say themselves. */
function settle(
  found: Lateness,
  due: readonly Due[],
  strokes: readonly PlayedStroke[],
  start: number,
): Lateness {
  const at: LatenessAt = (one) => found.seconds + found.slope * (one.seconds - start);
  const { pairs } = matchStrokes(due, strokes, at);
  if (pairs.length === 0) return found;
  return {
    ...found,
    seconds: found.seconds + median(pairs.map(({ due: one, lateSeconds }) => lateSeconds - at(one))),
  };
}

/** How late a round is played as a whole. */
export function latenessOf(
  due: readonly Due[],
  strokes: readonly PlayedStroke[],
  { isAlongClick, bars }: { readonly isAlongClick: boolean; readonly bars: readonly PlayedBar[] },
): Lateness {
  const first = due[0];
  const start = bars[0]?.startSeconds ?? 0;
  if (!first) return { seconds: 0, slope: 0 };
  const most = isAlongClick ? FARTHEST_SECONDS.click : FARTHEST_SECONDS.own;
  const farthest = Math.min(most, FARTHEST_BEATS * first.beatSeconds);
  const sought = { due, times: bySurface(strokes), start, farthest };
  const steady = search(sought, [0]);
  const leaves = isAlongClick && heardAt(sought, steady) < STEADY_SHARE * due.length;
  return settle(leaves ? search(sought, SLOPES) : steady, due, strokes, start);
}
