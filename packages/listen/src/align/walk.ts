/**
 * Walking along the beats of a take from a place that is known, in one direction: the likeliest of many ways, each
 * with a tempo of its own that drifts and, at a price, leaps.
 *
 * Conventions: seconds; the length of a bar stands for the tempo.
 * Source: a beam search over beats, as in S. Dixon, "Automatic extraction of tempo and beat from expressive
 * performances", JNMR 30(1), 2001; the time and tempo of each way follow an alpha-beta filter.
 * Differs from the source: what is written says what should be heard on and between the beats.
 */
import { type Beat, lookFor } from './beat-strokes.ts';
import type { Observations } from './observations.ts';

/** A beat that was reached. */
export interface WalkedBeat {
  readonly seconds: number;
  readonly barSeconds: number;
  /** Which beat of the bar, from 0. */
  readonly beat: number;
}

/** What is walked through. */
export interface Walk {
  readonly seen: Observations;
  readonly beats: readonly Beat[];
  /** Seconds that a stroke may lie from its place, by the length of a bar. */
  readonly tolerance: (barSeconds: number) => number;
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

interface Way extends WalkedBeat {
  readonly score: number;
  readonly from: Way | null;
}

interface Leap {
  /** By which the bar's length is multiplied. */
  readonly ratio: number;
  readonly cost: number;
}

/** How much of what a beat shows goes into its time, and into the tempo. */
const GAIN_TIME = 0.5;
const GAIN_TEMPO = 0.12;
/** A beat of which this share is seen is trusted in full. */
const TRUSTED = 0.67;
/** Changes of tempo from beat to beat beside what the filter follows: by 3 and by 9 %. */
const LEAPS: readonly Leap[] = [
  { ratio: 1, cost: 0 },
  { ratio: Math.exp(0.03), cost: 1 },
  { ratio: Math.exp(-0.03), cost: 1 },
  { ratio: Math.exp(0.09), cost: 2.5 },
  { ratio: Math.exp(-0.09), cost: 2.5 },
];
/** Ways that are followed at once. */
const WAYS = 24;
/** Ways nearer than this in time and in the logarithm of tempo are one. */
const ALIKE_SECONDS = 0.012;
const ALIKE_LOG = 0.01;
/** More than there are tempi that are unlike each other: bars from a hundredth of a second to a hundred. */
const TEMPI = 1024;
/** Farthest that a bar's length may come from what it was at first, as a ratio. */
const WIDEST = 1.5;

function step(walk: Walk, way: Way, direction: 1 | -1, leap: Leap): Way {
  const { seen, beats } = walk;
  const barSeconds = way.barSeconds * leap.ratio;
  const tolerance = walk.tolerance(barSeconds);
  const beat = (way.beat + direction + beats.length) % beats.length;
  const between = beats[direction === 1 ? way.beat : beat]!;
  const span = barSeconds * between.share;
  const seconds = way.seconds + direction * span;
  const startSeconds = Math.min(seconds, way.seconds);
  const off = lookFor(seen, between.off, { startSeconds, seconds: span, tolerance });
  const on = lookFor(seen, beats[beat]!.on, { startSeconds: seconds, seconds: span, tolerance });
  const shift = on.shift * Math.min(1, on.match / TRUSTED);
  return {
    seconds: seconds + GAIN_TIME * shift,
    barSeconds: barSeconds + (direction * GAIN_TEMPO * shift) / between.share,
    beat,
    score: way.score + on.score + off.score - leap.cost,
    from: way,
  };
}

/** The best ways, each unlike the others. */
function sift(ways: readonly Way[]): readonly Way[] {
  const kept = new Map<number, Way>();
  for (const way of ways) {
    const time = Math.round(way.seconds / ALIKE_SECONDS);
    const key = TEMPI * time + Math.round(Math.log(way.barSeconds) / ALIKE_LOG);
    const other = kept.get(key);
    if (!other || way.score > other.score) kept.set(key, way);
  }
  return [...kept.values()].toSorted((a, b) => b.score - a.score).slice(0, WAYS);
}

/** The beats after the first one, in the order in which they are walked, as far as the walk goes. */
export function walkBeats(walk: Walk, first: WalkedBeat, direction: 1 | -1): readonly WalkedBeat[] {
  const [shortest, longest] = [first.barSeconds / WIDEST, first.barSeconds * WIDEST];
  const start: Way = { ...first, score: 0, from: null };
  let ways: readonly Way[] = [start];
  let best: Way | null = null;
  while (ways.length > 0) {
    const going: Way[] = [];
    for (const way of ways) {
      for (const leap of LEAPS) {
        const next = step(walk, way, direction, leap);
        if (next.barSeconds < shortest || next.barSeconds > longest) continue;
        if (next.seconds >= walk.fromSeconds && next.seconds <= walk.toSeconds) going.push(next);
        else if (!best || way.score > best.score) best = way;
      }
    }
    ways = sift(going);
  }
  const walked: WalkedBeat[] = [];
  for (let way = best ?? start; way.from; way = way.from) walked.push(way);
  return walked.reverse();
}
