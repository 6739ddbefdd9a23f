/**
 * Which bar of the form is played in each bar of the take: the likeliest path, with repeats and skips allowed.
 *
 * Conventions: scores are those of `matchBar`; a bar played again or left out costs, and so does a bar of the
 * take in which nothing of the form is played.
 * Source: the Viterbi algorithm over a left-to-right loop with jumps.
 */
import type { FormGrid } from './form-grid.ts';
import { matchBar, type TrackedBar, unwritten } from './match-bar.ts';
import { firstFrom, KIND_COUNT, type Observations } from './observations.ts';

/** One bar of the take and the bar of the form in it (index from 0), or null. */
export interface PlacedBar extends TrackedBar {
  readonly formBar: number | null;
  /** How well it fits, as by `matchBar`: weights gained less weights lost, no unit. */
  readonly score: number;
}

/** Going on elsewhere than with the next bar; and with the same one again, or with one left out, which is likelier. */
const JUMP = 1.6;
const NEAR_JUMP = 1.4;
/** Going from the form's last bar to its first. */
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
    for (let kind = 0; kind < KIND_COUNT; kind += 1) score += unwritten(seen, i, kind);
  }
  return score;
}

/** For each bar of the form, the first one that has the same strokes. */
function alikeIn(grid: FormGrid): readonly number[] {
  const names = grid.bars.map(({ strokes }) =>
    strokes.map((one) => `${one.voice}${one.position.toFixed(4)}`).join(),
  );
  return names.map((name) => names.indexOf(name));
}

/** How well each bar of the form explains a bar of the take, and last how well nothing does. */
function emissionsOf(
  seen: Observations,
  grid: FormGrid,
  alike: readonly number[],
  bar: TrackedBar,
): Float64Array {
  const emissions = new Float64Array(grid.bars.length + 1);
  grid.bars.forEach((expected, i) => {
    const first = alike[i]!;
    emissions[i] = first < i ? emissions[first]! : matchBar(seen, grid, expected, bar);
  });
  emissions[grid.bars.length] = emptiness(seen, bar) - NOTHING;
  return emissions;
}

/** What is paid at the first bar of the take for each state. */
function beginnings(count: number): Float64Array {
  return Float64Array.from({ length: count + 1 }, (_, i) => (i === 0 || i === count ? 0 : -MIDDLE));
}

/** The likeliest state before each state, and the score that it comes with. The last state is that nothing is played. */
function advance(total: Float64Array): { readonly values: Float64Array; readonly from: Int32Array } {
  const none = total.length - 1;
  const values = new Float64Array(total.length);
  const from = new Int32Array(total.length);
  const best = total.reduce((most, score, i) => (score > total[most]! ? i : most), 0);
  for (let i = 0; i <= none; i += 1) {
    const offer = (state: number, cost: number) => {
      if (total[state]! - cost <= values[i]!) return;
      values[i] = total[state]! - cost;
      from[i] = state;
    };
    values[i] = total[best]! - JUMP;
    from[i] = best;
    if (i === none) {
      offer(none, 0);
      continue;
    }
    offer(i, NEAR_JUMP);
    offer((i - 2 + none) % none, NEAR_JUMP);
    offer((i - 1 + none) % none, i === 0 ? LOOP : 0);
  }
  return { values, from };
}

/** The likeliest bar of the form in each tracked bar. */
export function placeBars(
  seen: Observations,
  grid: FormGrid,
  bars: readonly TrackedBar[],
): { readonly bars: readonly PlacedBar[]; readonly score: number } {
  const none = grid.bars.length;
  const alike = alikeIn(grid);
  const emissions = bars.map((bar) => emissionsOf(seen, grid, alike, bar));
  const back: Int32Array[] = [];
  let total = beginnings(none);
  emissions.forEach((emission, index) => {
    const { values, from } = index === 0 ? { values: total, from: new Int32Array(none + 1) } : advance(total);
    back.push(from);
    total = values.map((value, i) => value + emission[i]!);
  });
  let state = total.reduce((most, score, i) => (score > total[most]! ? i : most), 0);
  const score = total[state]!;
  const placed: PlacedBar[] = [];
  for (let index = bars.length - 1; index >= 0; index -= 1) {
    const formBar = state === none ? null : state;
    placed.push({ ...bars[index]!, formBar, score: emissions[index]![state]! });
    state = back[index]![state]!;
  }
  return { bars: placed.reverse(), score };
}
