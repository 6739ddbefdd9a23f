/**
 * Which bar of the form is played in each bar of the take: the likeliest path, with repeats and skips allowed.
 *
 * Conventions: scores are those of `matchBar`, or others in the unit of their costs; a bar played again or left out costs,
 * and so does a bar of the take in which nothing of the form is played.
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

/** What a way through a form costs, in the unit of what its bars are explained by. */
export interface WayCosts {
  /** Going on elsewhere than with the next bar, a score or a logarithm, as all of these; no unit. */
  readonly jump: number;
  /** Going on with the same bar again, or with one left out, which is likelier; no unit. */
  readonly nearJump: number;
  /** Going from the form's last bar to its first; no unit. */
  readonly loop: number;
  /** Beginning elsewhere than at the form's first bar; no unit. */
  readonly middle: number;
}

const COSTS: WayCosts = { jump: 1.6, nearJump: 1.4, loop: 0.1, middle: 0.3 };
const NOTHING = 1.2;

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
export function alikeIn(grid: FormGrid): readonly number[] {
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
function beginnings(count: number, { middle }: WayCosts): Float64Array {
  return Float64Array.from({ length: count + 1 }, (_, i) => (i === 0 || i === count ? 0 : -middle));
}

/** The likeliest state before each state, and the score that it comes with. The last state is that nothing is played. */
function advance(
  total: Float64Array,
  { jump, nearJump, loop }: WayCosts,
): { readonly values: Float64Array; readonly from: Int32Array } {
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
    values[i] = total[best]! - jump;
    from[i] = best;
    if (i === none) {
      offer(none, 0);
      continue;
    }
    offer(i, nearJump);
    offer((i - 2 + none) % none, nearJump);
    offer((i - 1 + none) % none, i === 0 ? loop : 0);
  }
  return { values, from };
}

/**
 * The likeliest way through a form: its bar (index from 0) in each bar of the take, or null where nothing is played.
 * @param emissions for each bar of the take how well each bar of the form explains it, and last how well nothing does
 */
export function likeliestWay(
  emissions: readonly Float64Array[],
  costs: WayCosts,
): { readonly bars: readonly (number | null)[]; readonly score: number } {
  const none = (emissions[0]?.length ?? 1) - 1;
  const back: Int32Array[] = [];
  let total = beginnings(none, costs);
  emissions.forEach((emission, index) => {
    const { values, from } =
      index === 0 ? { values: total, from: new Int32Array(none + 1) } : advance(total, costs);
    back.push(from);
    total = values.map((value, i) => value + emission[i]!);
  });
  let state = total.reduce((most, score, i) => (score > total[most]! ? i : most), 0);
  const score = total[state]!;
  const bars: (number | null)[] = [];
  for (let index = emissions.length - 1; index >= 0; index -= 1) {
    bars.push(state === none ? null : state);
    state = back[index]![state]!;
  }
  return { bars: bars.reverse(), score };
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
  const way = likeliestWay(emissions, COSTS);
  const placed = bars.map((bar, index) => {
    const formBar = way.bars[index] ?? null;
    return { ...bar, formBar, score: emissions[index]![formBar ?? none]! };
  });
  return { bars: placed, score: way.score };
}
