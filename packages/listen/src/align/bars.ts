/**
 * Which bar of the form is played in each bar of the take: the likeliest path, with repeats and skips allowed.
 *
 * Conventions: scores are those of `matchBar`; a bar played again or left out costs, and so does a bar of the
 * take in which nothing of the form is played.
 * Source: the Viterbi algorithm over a left-to-right loop with jumps.
 */
import { matchBar, type TrackedBar } from './follow.ts';
import type { FormGrid } from './form-grid.ts';
import { firstFrom, KIND_COUNT, type Observations } from './observations.ts';

/** One bar of the take and the bar of the form in it (index from 0), or null. */
export interface PlacedBar extends TrackedBar {
  readonly formBar: number | null;
  readonly score: number;
}

const JUMP = 1.6;
const LOOP = 0.1;
const NOTHING = 1.2;
/** Beginning elsewhere than at the form's first bar. */
const MIDDLE = 0.3;

/** Something was struck in a bar that the form does not explain: a small cost a stroke. */
function emptiness(seen: Observations, bar: TrackedBar): number {
  let score = 0;
  const end = bar.startSeconds + bar.barSeconds;
  for (let i = firstFrom(seen.times, bar.startSeconds - 0.04); i < seen.times.length; i += 1) {
    if (seen.times[i]! >= end - 0.04) break;
    for (let kind = 0; kind < KIND_COUNT; kind += 1) score -= 0.5 * seen.values[i * KIND_COUNT + kind]!;
  }
  return score;
}

/** Shifts the bar lines of tracked bars by whole beats. */
export function rotateBars(bars: readonly TrackedBar[], grid: FormGrid, beat: number): readonly TrackedBar[] {
  const by = grid.beats[beat] ?? 0;
  if (by === 0) return bars;
  const first = bars[0]!;
  const before = { startSeconds: first.startSeconds - first.barSeconds, barSeconds: first.barSeconds };
  return [before, ...bars].map((bar, index, all) => {
    const next = all[index + 1];
    const startSeconds = bar.startSeconds + by * bar.barSeconds;
    const end = next ? next.startSeconds + by * next.barSeconds : startSeconds + bar.barSeconds;
    return { startSeconds, barSeconds: next ? end - startSeconds : bar.barSeconds };
  });
}

/** The likeliest bar of the form in each tracked bar. */
export function placeBars(
  seen: Observations,
  grid: FormGrid,
  bars: readonly TrackedBar[],
): { readonly bars: readonly PlacedBar[]; readonly score: number } {
  const count = grid.bars.length;
  const none = count;
  let total = new Float64Array(count + 1);
  const back: Int32Array[] = [];
  const emissions: Float64Array[] = [];
  bars.forEach((bar, index) => {
    const emission = new Float64Array(count + 1);
    const known = new Map<string, number>();
    grid.bars.forEach((expected, i) => {
      const key = expected.strokes.map((s) => `${s.voice}${s.position.toFixed(4)}`).join();
      const score = known.get(key) ?? matchBar(seen, grid, expected, bar);
      known.set(key, score);
      emission[i] = score;
    });
    emission[none] = emptiness(seen, bar) - NOTHING;
    emissions.push(emission);
    const next = new Float64Array(count + 1);
    const from = new Int32Array(count + 1);
    let best = 0;
    for (let i = 1; i <= count; i += 1) if (total[i]! > total[best]!) best = i;
    for (let i = 0; i <= count; i += 1) {
      let value = total[best]! - (index > 0 ? JUMP : i === 0 || i === none ? 0 : MIDDLE);
      from[i] = best;
      const usual = i === none ? none : i > 0 ? i - 1 : count - 1;
      const usualValue = total[usual]! - (i === 0 ? LOOP : 0);
      if (index > 0 && usualValue > value) {
        value = usualValue;
        from[i] = usual;
      }
      next[i] = value + emission[i]!;
    }
    total = next;
    back.push(from);
  });
  let state = 0;
  for (let i = 1; i <= count; i += 1) if (total[i]! > total[state]!) state = i;
  const score = total[state]!;
  const placed: PlacedBar[] = [];
  for (let index = bars.length - 1; index >= 0; index -= 1) {
    const bar = bars[index]!;
    placed.push({ ...bar, formBar: state === none ? null : state, score: emissions[index]![state]! });
    state = back[index]![state]!;
  }
  return { bars: placed.reverse(), score };
}
