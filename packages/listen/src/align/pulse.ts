/**
 * First guess of pulse: which bar length and bar line explain a stretch of the take best.
 *
 * Conventions: a stretch is folded onto one bar of each trial length and compared, kind by kind, with the form's
 * average bar at every rotation; scores are correlations, about 0 to 1.
 * Source: the idea of folding at trial periods is that of comb-filter tempo estimation (E. Scheirer, JASA 103(1),
 * 1998); half and double tempo are told apart by what is written.
 */
import type { FormGrid } from './form-grid.ts';
import { ANY, firstFrom, KIND_COUNT, kindOf, type Observations } from './observations.ts';

/** Where a bar might begin and how long it is. */
export interface PulseGuess {
  readonly startSeconds: number;
  readonly barSeconds: number;
  /** Correlation with the average bar, about 0 to 1. */
  readonly score: number;
}

/** Parts of a beat in the folded bar. */
const PARTS = 24;
/** Spread of a stroke in the folded bar, in parts. */
const SPREAD = 1.3;
/** What is seen less surely than this is left out. */
const FAINT = 0.15;
/** Weight of a written stroke as a stroke of any kind. */
const WRITTEN_ANY = 0.7;

/** A fold of the bar: `bins` values for each kind, of zero mean and total energy one. */
interface Fold {
  readonly bins: number;
  readonly values: Float64Array;
}

/** What is written in an average bar: the bins that hold anything, in a fold that holds each kind's bar twice. */
interface Template {
  readonly bins: number;
  readonly at: Int32Array;
  readonly weights: Float64Array;
}

/** Bins on each side that a stroke is spread over. */
const REACH = 4;

/** Adds a stroke at a position of the bar, with a weight for each kind. */
function addStroke(fold: Float64Array, bins: number, position: number, weights: Float64Array): void {
  const centre = position * bins;
  for (let bin = Math.round(centre) - REACH; bin <= Math.round(centre) + REACH; bin += 1) {
    const distance = (bin - centre) / SPREAD;
    const share = Math.exp(-0.5 * distance * distance);
    const index = ((bin % bins) + bins) % bins;
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      const weight = weights[kind]!;
      if (weight > 0) fold[kind * bins + index] = fold[kind * bins + index]! + weight * share;
    }
  }
}

/** Takes the mean of each kind out and brings the total energy to one, in place. @returns what it was scaled by */
function whiten(values: Float64Array, bins: number): number {
  let energy = 0;
  for (let kind = 0; kind < KIND_COUNT; kind += 1) {
    let mean = 0;
    for (let bin = 0; bin < bins; bin += 1) mean += values[kind * bins + bin]! / bins;
    for (let bin = 0; bin < bins; bin += 1) {
      values[kind * bins + bin] = values[kind * bins + bin]! - mean;
      energy += values[kind * bins + bin]! ** 2;
    }
  }
  const scale = energy > 0 ? 1 / Math.sqrt(energy) : 0;
  for (let i = 0; i < values.length; i += 1) values[i] = values[i]! * scale;
  return scale;
}

/** The average bar of a form. Its means need not be taken out: those of a fold are, so they correlate with nothing. */
function averageBar(grid: FormGrid): Template {
  const bins = grid.beats.length * PARTS;
  const values = new Float64Array(KIND_COUNT * bins);
  for (const bar of grid.bars) {
    for (const stroke of bar.strokes) {
      const weights = new Float64Array(KIND_COUNT);
      weights[kindOf(stroke.voice)] = 1;
      weights[ANY] = WRITTEN_ANY;
      addStroke(values, bins, stroke.position, weights);
    }
  }
  const scale = whiten(values.slice(), bins);
  const held = Int32Array.from(values.keys()).filter((i) => values[i] !== 0);
  return {
    bins,
    at: held.map((i) => i + bins * Math.floor(i / bins)),
    weights: Float64Array.from(held, (i) => values[i]! * scale),
  };
}

function foldTake(seen: Observations, bins: number, from: number, to: number, barSeconds: number): Fold {
  const values = new Float64Array(KIND_COUNT * bins);
  const weights = new Float64Array(KIND_COUNT);
  for (let i = firstFrom(seen.times, from); i < seen.times.length && seen.times[i]! < to; i += 1) {
    const position = (seen.times[i]! - from) / barSeconds;
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      const value = seen.values[i * KIND_COUNT + kind]!;
      weights[kind] = value > FAINT ? value : 0;
    }
    addStroke(values, bins, position - Math.floor(position), weights);
  }
  whiten(values, bins);
  return { bins, values };
}

/** Folds of a take, kept as long as it is: they are the same whatever exercise is looked for in it, and in whatever feel. */
const folds = new WeakMap<Observations, Map<string, Fold>>();
/** So many are kept of a take; then all are forgotten. */
const MOST_FOLDS = 2048;

function foldOf(seen: Observations, bins: number, from: number, to: number, barSeconds: number): Fold {
  const known = folds.get(seen) ?? new Map<string, Fold>();
  folds.set(seen, known);
  const key = `${bins} ${from} ${to} ${barSeconds}`;
  const before = known.get(key);
  if (before) return before;
  if (known.size >= MOST_FOLDS) known.clear();
  const fold = foldTake(seen, bins, from, to, barSeconds);
  known.set(key, fold);
  return fold;
}

/** The rotation of a template, in bins, that a fold correlates with best. */
function bestRotation({ bins, values }: Fold, { at, weights }: Template): { shift: number; score: number } {
  const twice = new Float64Array(2 * KIND_COUNT * bins);
  for (let kind = 0; kind < KIND_COUNT; kind += 1) {
    const row = values.subarray(kind * bins, (kind + 1) * bins);
    twice.set(row, 2 * kind * bins);
    twice.set(row, (2 * kind + 1) * bins);
  }
  const scores = new Float64Array(bins);
  // Four rotations at a time: a beat has 24 parts.
  for (let shift = 0; shift < bins; shift += 4) {
    let [s0, s1, s2, s3] = [0, 0, 0, 0];
    for (let i = 0; i < at.length; i += 1) {
      const weight = weights[i]!;
      const from = at[i]! + shift;
      s0 += weight * twice[from]!;
      s1 += weight * twice[from + 1]!;
      s2 += weight * twice[from + 2]!;
      s3 += weight * twice[from + 3]!;
    }
    scores.set([s0, s1, s2, s3], shift);
  }
  const score = Math.max(...scores);
  return { shift: scores.indexOf(score), score };
}

/** Trial bar lengths from `shortest` to `longest`, a steady ratio apart. */
export function trialLengths(shortest: number, longest: number, ratio: number): readonly number[] {
  const count = Math.max(1, Math.ceil(Math.log(longest / shortest) / Math.log(ratio)));
  return Array.from({ length: count + 1 }, (_, i) => shortest * (longest / shortest) ** (i / count));
}

/** The best guesses over a stretch of the take, best first. */
export function guessPulse(
  seen: Observations,
  grid: FormGrid,
  stretch: { readonly fromSeconds: number; readonly bars: number; readonly lengths: readonly number[] },
): readonly PulseGuess[] {
  const template = averageBar(grid);
  const guesses: PulseGuess[] = [];
  for (const barSeconds of stretch.lengths) {
    const to = stretch.fromSeconds + stretch.bars * barSeconds;
    const fold = foldOf(seen, template.bins, stretch.fromSeconds, to, barSeconds);
    const best = bestRotation(fold, template);
    guesses.push({
      startSeconds: stretch.fromSeconds + (best.shift / template.bins) * barSeconds,
      barSeconds,
      score: best.score,
    });
  }
  return guesses.toSorted((a, b) => b.score - a.score);
}
