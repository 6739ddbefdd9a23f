/**
 * Which beats a take may have, before anything is known of it: lengths at which what is struck comes round, walked from
 * the first stroke to the last.
 *
 * Conventions: seconds.
 * Sources: lengths from the histogram of all intervals up to a few seconds (S. Dixon, J. New Music Res. 30(1), 2001);
 * beats smoothed by locally weighted regression (W. S. Cleveland, JASA 74(368), 1979).
 */
import { fitLine } from '@shedbook/signal';

/** Between how many beats a minute a pulse is looked for. */
export interface Limits {
  readonly leastBpm: number;
  readonly mostBpm: number;
}

const STEP_SECONDS = 0.004;
const BLUR_SECONDS = 0.016;
const PEAKS = 16;
/** Strokes at the start that the first beat may be on. */
const STARTS = 6;
/** How far from where it is expected a beat is looked for, as a share of a beat, and how much it is believed. */
const REACH = 0.14;
const GAIN = { shift: 0.45, length: 0.12 } as const;
/** Most that a beat may differ from the first guess, as a share. */
const WANDER = 0.2;
const SMOOTH_BEATS = 5;

/** How often each interval comes between any two moments. */
function intervals(moments: readonly number[], longest: number): Float64Array {
  const counts = new Float64Array(Math.ceil(longest / STEP_SECONDS) + 1);
  for (let i = 0; i < moments.length; i += 1)
    for (let j = i + 1; j < moments.length && moments[j]! - moments[i]! < longest; j += 1) {
      const centre = (moments[j]! - moments[i]!) / STEP_SECONDS;
      const reach = (2.5 * BLUR_SECONDS) / STEP_SECONDS;
      for (let bin = Math.max(0, Math.ceil(centre - reach)); bin <= centre + reach; bin += 1)
        if (bin < counts.length)
          counts[bin] = counts[bin]! + Math.exp(-0.5 * (((bin - centre) * STEP_SECONDS) / BLUR_SECONDS) ** 2);
    }
  return counts;
}

/** Lengths of a beat at which moments come round, likeliest first. */
export function beatLengths(moments: readonly number[], { leastBpm, mostBpm }: Limits): readonly number[] {
  const counts = intervals(moments, 4 * (60 / leastBpm) + 0.1);
  const at = (seconds: number) => counts[Math.round(seconds / STEP_SECONDS)] ?? 0;
  const found: { readonly seconds: number; readonly score: number }[] = [];
  for (let seconds = 60 / mostBpm; seconds <= 60 / leastBpm; seconds += STEP_SECONDS / 2) {
    const score = at(seconds) + at(2 * seconds) + at(4 * seconds);
    found.push({ seconds, score });
  }
  const peaks: typeof found = [];
  for (const one of found.toSorted((a, b) => b.score - a.score)) {
    if (peaks.length === PEAKS) break;
    if (!peaks.some(({ seconds }) => Math.abs(Math.log(seconds / one.seconds)) < 0.03)) peaks.push(one);
  }
  return peaks.map(({ seconds }) => seconds);
}

/** The moment nearest to a time, or null where none is within reach. */
function nearest(moments: readonly number[], seconds: number, reach: number): number | null {
  let low = 0;
  let high = moments.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (moments[middle]! < seconds) low = middle + 1;
    else high = middle;
  }
  const [before, after] = [moments[low - 1], moments[low]];
  const distance = (one: number | undefined) =>
    one === undefined ? Number.POSITIVE_INFINITY : Math.abs(one - seconds);
  const best = distance(before) <= distance(after) ? before : after;
  return distance(best) <= reach ? best! : null;
}

function walk(moments: readonly number[], start: number, length: number): readonly number[] {
  const beats = [start];
  let [at, own] = [start, length];
  const last = moments.at(-1)! + 0.5 * length;
  while (at + own <= last) {
    at += own;
    const seen = nearest(moments, at, REACH * own);
    if (seen !== null) {
      const late = seen - at;
      at += GAIN.shift * late;
      own = Math.max(length * (1 - WANDER), Math.min(length * (1 + WANDER), own + GAIN.length * late));
    }
    beats.push(at);
  }
  return beats;
}

/** Beats laid through what was struck on them and on those around them. */
function smooth(moments: readonly number[], beats: readonly number[], length: number): readonly number[] {
  const seen = beats.map((beat) => nearest(moments, beat, REACH * length));
  return beats.map((beat, index) => {
    const points: { x: number; y: number; weight: number }[] = [];
    for (
      let i = Math.max(0, index - SMOOTH_BEATS);
      i <= Math.min(beats.length - 1, index + SMOOTH_BEATS);
      i += 1
    ) {
      const weight = (1 - (Math.abs(i - index) / (SMOOTH_BEATS + 1)) ** 3) ** 3;
      points.push({
        x: i - index,
        y: seen[i] ?? beats[i]!,
        weight: seen[i] === null ? weight * 0.05 : weight,
      });
    }
    const { at, slope } = fitLine(points);
    return points.length > 2 && slope > 0 ? at : beat;
  });
}

/** Every walk through a take that may be its beat: one for each length and each of the first strokes. */
export function walksOf(
  moments: readonly number[],
  lengths: readonly number[],
): readonly (readonly number[])[] {
  return lengths.flatMap((length) => {
    const starts: number[] = [];
    for (const moment of moments.slice(0, STARTS)) {
      const phase = (seconds: number) => {
        const turns = (seconds - moment) / length;
        return Math.abs(turns - Math.round(turns));
      };
      if (moment - moments[0]! < 4 * length && !starts.some((other) => phase(other) < 0.1))
        starts.push(moment);
    }
    return starts.map((start) => {
      // A beat that is not struck may come before the first stroke.
      const walked = walk(moments, start, length);
      const before: number[] = [];
      for (let at = start - length; at > moments[0]! - 0.1 * length; at -= length) before.unshift(at);
      const beats = [...before, ...walked];
      return smooth(moments, smooth(moments, beats, length), length);
    });
  });
}
