/**
 * Windows: which candidates each place of a page may take, so that difficulty rises in even steps.
 *
 * Conventions: candidates are in ascending order of points; a window is a range of their indices, `to` excluded.
 */
import { type PageBar, SAME_POINTS } from './page-bar.ts';

/** A range of candidates, `to` excluded. */
export interface Window {
  /** Index of the first candidate. */
  readonly from: number;
  /** Index after the last candidate. */
  readonly to: number;
}

/** The index of the first candidate that has at least `points`. */
export function firstAtLeast(candidates: readonly PageBar[], points: number): number {
  let low = 0;
  let high = candidates.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((candidates[middle] as PageBar).points < points) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** A stretch of places without a kept bar, and the points it lies between. */
export interface Stretch {
  /** Places on the page, from 0. */
  readonly start: number;
  readonly length: number;
  /** Difficulty at its start, in points. */
  readonly least: number;
  /** Difficulty at its end, in points. */
  readonly most: number;
}

/** The stretches between kept bars; where kept bars fall, the stretch lies between the two all the same. */
export function stretchesOf(
  kept: ReadonlyMap<number, PageBar>,
  count: number,
  least: number,
  most: number,
): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let start = 0;
  let before: number | null = null;
  for (let place = 0; place <= count; place += 1) {
    const bar = kept.get(place);
    if (!bar && place < count) continue;
    const from: number = before ?? Math.min(least, bar?.points ?? least);
    const to: number = bar?.points ?? Math.max(most, before ?? most);
    if (place > start) {
      stretches.push({ start, length: place - start, least: Math.min(from, to), most: Math.max(from, to) });
    }
    start = place + 1;
    before = bar?.points ?? null;
  }
  return stretches;
}

/** How much the steps of a page grow: 1 would be even; the last step is this many times the even one. */
export const STEP_GROWTH = 1.25;

/** Bounds between windows of rising difficulty, moved so that every window has a candidate. */
function boundsOf(candidates: readonly PageBar[], stretch: Stretch, range: Window): readonly number[] {
  const { length, least, most } = stretch;
  const bounds = Array.from({ length: length + 1 }, (_, i) =>
    i === length ? range.to : firstAtLeast(candidates, least + (most - least) * (i / length) ** STEP_GROWTH),
  );
  for (let i = 0; i <= length; i += 1) bounds[i] = Math.max(bounds[i] as number, range.from + i);
  for (let i = length; i >= 0; i -= 1) bounds[i] = Math.min(bounds[i] as number, range.to - (length - i));
  bounds[0] = range.from;
  return bounds;
}

/** Candidates of a stretch: those between its points, and the nearest beyond where they are too few. */
function rangeOf(candidates: readonly PageBar[], stretch: Stretch): Window {
  let from = firstAtLeast(candidates, stretch.least);
  let to = firstAtLeast(candidates, stretch.most + SAME_POINTS);
  while (to - from < stretch.length && (from > 0 || to < candidates.length)) {
    if (from > 0) from -= 1;
    if (to - from < stretch.length && to < candidates.length) to += 1;
  }
  return { from, to };
}

/**
 * The window of every place of a stretch.
 * @param looseness how many neighbouring windows each one reaches over
 */
export function windowsOf(
  candidates: readonly PageBar[],
  stretch: Stretch,
  looseness: number,
): readonly Window[] {
  const bounds = boundsOf(candidates, stretch, rangeOf(candidates, stretch));
  return Array.from({ length: stretch.length }, (_, i) => ({
    from: bounds[Math.max(0, i - looseness)] as number,
    to: bounds[Math.min(stretch.length, i + 1 + looseness)] as number,
  }));
}
