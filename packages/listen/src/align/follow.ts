/**
 * Following the pulse beat by beat from a first guess, in both directions, through drift, steps and wandering.
 *
 * Conventions: seconds; beats in order of time; a tracked bar has its own start and length.
 * Source: beats are smoothed by locally weighted regression with tricube weights (W. S. Cleveland, JASA 74(368),
 * 1979).
 */
import { fitLine } from '@shedbook/signal';
import { beatsOf, lookFor } from './beat-strokes.ts';
import type { FormGrid } from './form-grid.ts';
import { type TrackedBar, toleranceSeconds } from './match-bar.ts';
import type { Observations } from './observations.ts';
import type { PulseGuess } from './pulse.ts';
import { type Walk, type WalkedBeat, walkBeats } from './walk.ts';

/** Rounds in which the guessed bar settles, and how much it holds on to what was guessed. */
const SETTLINGS = 4;
const HOLD = 0.3;
/** How far apart two beats may lie to be smoothed together, in bars. */
const SMOOTH_BARS = 1.25;
const SMOOTHINGS = 2;
/** Weight of a beat on which nothing was seen, beside one on which everything was. */
const COASTED = 0.03;

interface Point {
  readonly x: number;
  readonly y: number;
  readonly weight: number;
}

function sightOf({ seen, beats, tolerance }: Walk, { seconds, barSeconds, beat }: WalkedBeat) {
  const { on, share } = beats[beat]!;
  const span = { startSeconds: seconds, seconds: share * barSeconds, tolerance: tolerance(barSeconds) };
  return lookFor(seen, on, span);
}

/** The guessed bar, laid through what is seen on its beats and on the next bar line. */
function settle(walk: Walk, guess: PulseGuess): WalkedBeat {
  let { startSeconds, barSeconds } = guess;
  for (let round = 0; round < SETTLINGS; round += 1) {
    let x = 0;
    const points = [...walk.beats, walk.beats[0]!].flatMap(({ share }, index): Point[] => {
      const seconds = startSeconds + x * barSeconds;
      const { shift, match } = sightOf(walk, { seconds, barSeconds, beat: index % walk.beats.length });
      const held: Point[] = [
        { x, y: shift, weight: match },
        { x, y: 0, weight: HOLD },
      ];
      x += share;
      return held;
    });
    const { at, slope } = fitLine(points);
    startSeconds += at;
    barSeconds += slope;
  }
  return { seconds: startSeconds, barSeconds, beat: 0 };
}

/** Beats laid through what is seen on them and on those around them. */
function smooth(walk: Walk, beats: readonly WalkedBeat[]): readonly WalkedBeat[] {
  let x = 0;
  const points = beats.map((beat): Point => {
    const { shift, match } = sightOf(walk, beat);
    const point = { x, y: beat.seconds + shift, weight: COASTED + match };
    x += walk.beats[beat.beat]!.share;
    return point;
  });
  let from = 0;
  return beats.map((beat, index) => {
    const middle = points[index]!.x;
    while (points[from]!.x < middle - SMOOTH_BARS) from += 1;
    const near: Point[] = [];
    for (let i = from; i < points.length && points[i]!.x <= middle + SMOOTH_BARS; i += 1) {
      const point = points[i]!;
      const distance = Math.abs(point.x - middle) / SMOOTH_BARS;
      near.push({ ...point, x: point.x - middle, weight: point.weight * (1 - distance ** 3) ** 3 });
    }
    const { at, slope } = fitLine(near);
    return slope > 0 ? { ...beat, seconds: at, barSeconds: slope } : beat;
  });
}

/** The beats of the take as a guess of its pulse leads to them, from one limit to the other. */
export function followPulse(
  seen: Observations,
  grid: FormGrid,
  guess: PulseGuess,
  limits: { readonly fromSeconds: number; readonly toSeconds: number },
): readonly WalkedBeat[] {
  const tolerance = (barSeconds: number) => toleranceSeconds(grid, barSeconds);
  const walk: Walk = { seen, beats: beatsOf(grid), tolerance, ...limits };
  const first = settle(walk, guess);
  let beats: readonly WalkedBeat[] = [
    ...walkBeats(walk, first, -1).toReversed(),
    first,
    ...walkBeats(walk, first, 1),
  ];
  for (let round = 0; round < SMOOTHINGS; round += 1) beats = smooth(walk, beats);
  return beats;
}

/** How many bars a beat lies behind the bar line, where bars begin on one beat of the guessed bar. */
function barsAt({ beats }: FormGrid, line: number, beat: number): number {
  const at = line + beat;
  const bars = Math.floor(at / beats.length);
  return bars + beats[at - bars * beats.length]! - beats[line]!;
}

/** The bars that begin on one beat of the guessed bar, from the first to the last that has a beat. */
export function barsFrom(beats: readonly WalkedBeat[], grid: FormGrid, line: number): readonly TrackedBar[] {
  const count = grid.beats.length;
  // Beyond the beats that were walked, time goes on as at the outermost one.
  const secondsAt = (index: number) => {
    const edge = Math.max(0, Math.min(beats.length - 1, index));
    const { seconds, barSeconds, beat } = beats[edge]!;
    const inBar = (beat - line + count) % count;
    return seconds + (barsAt(grid, line, inBar + index - edge) - barsAt(grid, line, inBar)) * barSeconds;
  };
  const bars: TrackedBar[] = [];
  const before = (beats[0]!.beat - line + count) % count;
  for (let index = -before; index < beats.length; index += count) {
    const startSeconds = secondsAt(index);
    bars.push({ startSeconds, barSeconds: secondsAt(index + count) - startSeconds });
  }
  return bars;
}
