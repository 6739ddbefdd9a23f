/**
 * Finding an exercise in a take: pulse, bar lines, and which bar of the form is played where.
 *
 * Conventions: seconds; bpm counts quarter notes. Nothing is known of where the take begins; its tempo may be
 * from half to twice the expected one.
 */
import { type PlacedBar, placeBars } from './bars.ts';
import { barsFrom, followPulse } from './follow.ts';
import type { FormGrid } from './form-grid.ts';
import type { Observations } from './observations.ts';
import { guessPulse, type PulseGuess, trialLengths } from './pulse.ts';
import type { WalkedBeat } from './walk.ts';

/** Where the form lies in the take. */
export interface Alignment {
  readonly bars: readonly PlacedBar[];
  /** Mean match of a written stroke, from about −0.9 (nothing there) to 1.1. */
  readonly matchPerStroke: number;
}

/** Bars of a stretch that is folded. */
const STRETCH_BARS = 4;
const TRIAL_RATIO = 1.008;
const WIDEST = 2.05;
const GUESSES = 4;
/** Least match of a written stroke in the first and in the last bar. */
const LEAST_MATCH = -0.3;

function strokesIn(grid: FormGrid, bars: readonly PlacedBar[]): number {
  return bars.reduce(
    (sum, bar) => sum + (bar.formBar === null ? 0 : grid.bars[bar.formBar]!.strokes.length),
    0,
  );
}

/** Guesses at several places of the take, unlike each other, best first. */
function guesses(seen: Observations, grid: FormGrid, from: number, to: number): readonly PulseGuess[] {
  const lengths = trialLengths(grid.barSeconds / WIDEST, grid.barSeconds * WIDEST, TRIAL_RATIO);
  const span = to - from;
  const bars = Math.max(2, Math.min(STRETCH_BARS, Math.floor(span / grid.barSeconds)));
  const anchors = span < 2.5 * bars * grid.barSeconds ? [0.02, 0.3] : [0.12, 0.4, 0.65];
  const all = anchors.flatMap((share) => {
    const found = guessPulse(seen, grid, { fromSeconds: from + share * span, bars, lengths });
    return found.slice(0, 12);
  });
  const kept: PulseGuess[] = [];
  for (const guess of all.toSorted((a, b) => b.score - a.score)) {
    const alike = kept.some((other) => Math.abs(Math.log(other.barSeconds / guess.barSeconds)) < 0.03);
    if (!alike) kept.push(guess);
    if (kept.length === GUESSES) break;
  }
  return kept;
}

/** Every whole-beat rotation of the bars, placed in the form; the best. */
function bestRotation(seen: Observations, grid: FormGrid, beats: readonly WalkedBeat[]) {
  const options = grid.beats.map((_, beat) => placeBars(seen, grid, barsFrom(beats, grid, beat)));
  return options.reduce((a, b) => (b.score > a.score ? b : a));
}

/** Leaves off bars before the first and after the last that is played: of which a third is there. */
export function trim(grid: FormGrid, bars: readonly PlacedBar[]): readonly PlacedBar[] {
  const isPlayed = (bar: PlacedBar) =>
    bar.formBar !== null && bar.score > LEAST_MATCH * strokesIn(grid, [bar]);
  const first = bars.findIndex(isPlayed);
  const last = bars.findLastIndex(isPlayed);
  return first < 0 ? [] : bars.slice(first, last + 1);
}

/** The form in the take, or null when nothing can be followed. */
export function align(seen: Observations, grid: FormGrid): Alignment | null {
  const { times } = seen;
  if (times.length < 4) return null;
  const from = times[0]! - 0.1;
  const to = times.at(-1)! + 0.1;
  let best: { bars: readonly PlacedBar[]; score: number } | null = null;
  for (const guess of guesses(seen, grid, from, to)) {
    const beats = followPulse(seen, grid, guess, { fromSeconds: from, toSeconds: to });
    const placed = bestRotation(seen, grid, beats);
    if (!best || placed.score > best.score) best = placed;
  }
  const bars = best ? trim(grid, best.bars) : [];
  return strokesIn(grid, bars) === 0 ? null : alignmentOf(grid, bars);
}

/** An alignment of bars that are known. */
export function alignmentOf(grid: FormGrid, bars: readonly PlacedBar[]): Alignment {
  const match = bars.reduce((sum, bar) => sum + (bar.formBar === null ? 0 : bar.score), 0);
  return { bars, matchPerStroke: match / Math.max(1, strokesIn(grid, bars)) };
}
