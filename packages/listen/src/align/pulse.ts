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
  readonly score: number;
}

/** Parts of a beat in the folded bar. */
const PARTS = 24;
/** Spread of a stroke in the folded bar, in parts. */
const SPREAD = 1.3;

/** A fold of the bar: `bins` values for each kind, of zero mean and total energy one. */
interface Fold {
  readonly bins: number;
  readonly values: Float64Array;
}

function addStroke(fold: Float64Array, bins: number, kind: number, position: number, weight: number): void {
  const centre = position * bins;
  for (let step = -4; step <= 4; step += 1) {
    const bin = Math.round(centre) + step;
    const distance = (bin - centre) / SPREAD;
    const index = ((bin % bins) + bins) % bins;
    fold[kind * bins + index] = fold[kind * bins + index]! + weight * Math.exp(-0.5 * distance * distance);
  }
}

function whiten(values: Float64Array, bins: number): Fold {
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
  return { bins, values };
}

/** The average bar of a form. */
export function averageBar(grid: FormGrid): Fold {
  const bins = grid.beats.length * PARTS;
  const values = new Float64Array(KIND_COUNT * bins);
  for (const bar of grid.bars) {
    for (const stroke of bar.strokes) {
      addStroke(values, bins, kindOf(stroke.voice), stroke.position, 1);
      addStroke(values, bins, ANY, stroke.position, 0.7);
    }
  }
  return whiten(values, bins);
}

function foldTake(seen: Observations, bins: number, from: number, to: number, barSeconds: number): Fold {
  const values = new Float64Array(KIND_COUNT * bins);
  for (let i = firstFrom(seen.times, from); i < seen.times.length && seen.times[i]! < to; i += 1) {
    const position = (seen.times[i]! - from) / barSeconds;
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      const weight = seen.values[i * KIND_COUNT + kind]!;
      if (weight > 0.15) addStroke(values, bins, kind, position - Math.floor(position), weight);
    }
  }
  return whiten(values, bins);
}

/** The best rotations of `template` on `fold`: shift in bins and correlation. */
function rotations(fold: Fold, template: Fold): { shift: number; score: number }[] {
  const { bins } = fold;
  return Array.from({ length: bins }, (_, shift) => {
    let score = 0;
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      const row = kind * bins;
      for (let bin = 0; bin < bins; bin += 1) {
        const to = bin + shift < bins ? bin + shift : bin + shift - bins;
        score += fold.values[row + to]! * template.values[row + bin]!;
      }
    }
    return { shift, score };
  });
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
    const fold = foldTake(seen, template.bins, stretch.fromSeconds, to, barSeconds);
    const all = rotations(fold, template);
    const best = all.reduce((a, b) => (b.score > a.score ? b : a));
    guesses.push({
      startSeconds: stretch.fromSeconds + (best.shift / template.bins) * barSeconds,
      barSeconds,
      score: best.score,
    });
  }
  return guesses.toSorted((a, b) => b.score - a.score);
}
