/**
 * Bars of a take of notes, settled by the notes themselves: nothing is in doubt there, so every line is laid through
 * them, and bars are added that would not be believed of a recording.
 *
 * Conventions: seconds; bars in order, each with its bar of the form. Bars are added at both ends as long as most of
 * what is written in the next bar of the form is played where it should be.
 */
import { fitLine } from '@shedbook/signal';
import type { PlacedBar } from '../align/bars.ts';
import type { FormGrid } from '../align/form-grid.ts';
import { toleranceSeconds } from '../align/match-bar.ts';
import type { TimedVoice } from './notes.ts';

/** A bar is played when this share of its written strokes is. */
const MOST = 0.6;
/** How much longer or shorter than its neighbour a bar may be taken for. */
const CHANGE = 0.04;
const ROUNDS = 3;
/** Bars at an end that the next one is laid beside. */
const EDGE = 4;

/** A stroke on the beat that was found: where in the take, counted in bars, and when. */
interface Point {
  readonly x: number;
  readonly y: number;
  readonly weight: number;
}

/** Index of the first note not before a time. */
function firstFrom(notes: readonly TimedVoice[], seconds: number): number {
  let low = 0;
  let high = notes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (notes[middle]!.timeSeconds < seconds) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Written strokes of a bar that were played, and how many there are. */
function playedIn(notes: readonly TimedVoice[], grid: FormGrid, bar: PlacedBar) {
  const strokes = bar.formBar === null ? [] : grid.bars[bar.formBar]!.strokes;
  const reach = toleranceSeconds(grid, bar.barSeconds);
  const near: TimedVoice[] = [];
  for (let i = firstFrom(notes, bar.startSeconds - reach); i < notes.length; i += 1) {
    if (notes[i]!.timeSeconds > bar.startSeconds + bar.barSeconds + reach) break;
    near.push(notes[i]!);
  }
  const found = strokes.flatMap(({ voice, position, onBeat }) => {
    const place = bar.startSeconds + position * bar.barSeconds;
    const own = near.filter((note) => note.voice === voice);
    const best = own.toSorted((a, b) => Math.abs(a.timeSeconds - place) - Math.abs(b.timeSeconds - place))[0];
    return best && Math.abs(best.timeSeconds - place) < reach
      ? [{ position, onBeat, seconds: best.timeSeconds }]
      : [];
  });
  return { found, share: strokes.length === 0 ? 0 : found.length / strokes.length };
}

/** A bar laid through the strokes on the beats of itself and of half a bar on each side. */
function fitted(points: readonly Point[], index: number, bar: PlacedBar): PlacedBar {
  const middle = index + 0.5;
  const near = points
    .filter(({ x }) => Math.abs(x - middle) <= 1.01)
    .map((point) => ({ ...point, x: point.x - middle }));
  if (near.length < 3) return bar;
  const { at, slope } = fitLine(near);
  if (Math.abs(Math.log(slope / bar.barSeconds)) > 2 * CHANGE || slope <= 0) return bar;
  return { ...bar, startSeconds: at - slope / 2, barSeconds: slope };
}

function refit(
  notes: readonly TimedVoice[],
  grid: FormGrid,
  bars: readonly PlacedBar[],
): readonly PlacedBar[] {
  const points = bars.flatMap((bar, index) =>
    playedIn(notes, grid, bar)
      .found.filter(({ onBeat }) => onBeat)
      .map(({ position, seconds }): Point => ({ x: index + position, y: seconds, weight: 1 })),
  );
  return bars.map((bar, index) => fitted(points, index, bar));
}

/** The bar after the last one, or before the first one, as it would be if the tempo went on changing as it does. */
function neighbour(bars: readonly PlacedBar[], grid: FormGrid, step: 1 | -1): PlacedBar | null {
  const ordered = step === 1 ? bars : bars.toReversed();
  const [edge, inner] = [ordered.at(-1)!, ordered.at(-2)];
  if (edge.formBar === null) return null;
  const ratio = inner ? edge.barSeconds / inner.barSeconds : 1;
  const barSeconds = edge.barSeconds * Math.max(1 - CHANGE, Math.min(1 + CHANGE, ratio));
  const startSeconds = step === 1 ? edge.startSeconds + edge.barSeconds : edge.startSeconds - barSeconds;
  const count = grid.bars.length;
  return { ...edge, startSeconds, barSeconds, formBar: (edge.formBar + step + count) % count };
}

/** The same bars counted so that the first is the form's first, where the notes agree with that as well. */
function fromTheTop(
  notes: readonly TimedVoice[],
  grid: FormGrid,
  bars: readonly PlacedBar[],
): readonly PlacedBar[] {
  const first = bars[0]?.formBar ?? 0;
  const count = grid.bars.length;
  const moved = bars.map((bar) =>
    bar.formBar === null ? bar : { ...bar, formBar: (bar.formBar - first + count) % count },
  );
  const agreeing = (each: readonly PlacedBar[]) =>
    each.reduce((sum, bar) => sum + playedIn(notes, grid, bar).found.length, 0);
  return first !== 0 && agreeing(moved) >= agreeing(bars) ? moved : bars;
}

/** The bars that follow at one end of some bars, in order. */
function follow(
  notes: readonly TimedVoice[],
  grid: FormGrid,
  bars: readonly PlacedBar[],
  step: 1 | -1,
): readonly PlacedBar[] {
  const added: PlacedBar[] = [];
  let edge = bars;
  for (;;) {
    const next = neighbour(edge, grid, step);
    if (!next || playedIn(notes, grid, next).share < MOST) return step === 1 ? added : added.toReversed();
    edge = refit(
      notes,
      grid,
      step === 1 ? [...edge.slice(1 - EDGE), next] : [next, ...edge.slice(0, EDGE - 1)],
    );
    added.push(step === 1 ? edge.at(-1)! : edge[0]!);
  }
}

/** The bars, laid through the notes, and those that follow at both ends. */
export function settleBars(
  notes: readonly TimedVoice[],
  grid: FormGrid,
  bars: readonly PlacedBar[],
): readonly PlacedBar[] {
  let settled = bars;
  for (let round = 0; round < ROUNDS; round += 1) settled = refit(notes, grid, settled);
  const before = follow(notes, grid, settled.slice(0, EDGE), -1);
  const after = follow(notes, grid, settled.slice(-EDGE), 1);
  settled = [...before, ...settled, ...after];
  return fromTheTop(notes, grid, settled);
}
