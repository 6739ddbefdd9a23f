/**
 * A theme and what may be made of it: displaced over the beats, thinned, filled, one beat turned.
 *
 * Conventions: cells as indices into the vocabulary; a displacement is in beats, later is positive; the distance
 * between two bars is the number of beats on which they differ, under the best displacement.
 * Source: common practice: displacing, thinning and filling a figure are the standard drills on it; the distance is
 * Hamming's over beats, least over rotations.
 */
import type { PageBar } from './page-bar.ts';

/** On how many beats a bar differs from another that is displaced by beats. */
export function beatsApart(a: ArrayLike<number>, b: ArrayLike<number>, later = 0): number {
  const n = a.length;
  let apart = 0;
  for (let beat = 0; beat < n; beat += 1) {
    const other = beat - later;
    if (a[beat] !== b[other < 0 ? other + n : other]) apart += 1;
  }
  return apart;
}

/** A bar displaced by beats, round the loop. */
function displaced(cells: ArrayLike<number>, beats: number): Uint16Array {
  const n = cells.length;
  return Uint16Array.from({ length: n }, (_, beat) => cells[(beat + n - beats) % n] as number);
}

/** A theme in a bar: how many beats later, and on how many beats it differs. */
export interface Likeness {
  /** Beats by which the theme is displaced. */
  readonly later: number;
  /** Number of beats that differ then. */
  readonly apart: number;
}

/** How a bar is like a theme: the displacement under which they differ least, the smallest one first. */
export function likeness(bar: ArrayLike<number>, theme: ArrayLike<number>): Likeness {
  let best = 0;
  let least = beatsApart(bar, theme);
  for (let later = 1; later < theme.length && least > 0; later += 1) {
    const apart = beatsApart(bar, theme, later);
    if (apart < least) {
      best = later;
      least = apart;
    }
  }
  return { later: best, apart: least };
}

/** On how many beats a bar differs from another, displaced as suits best; the same seen from either. */
export function beatsApartAnyhow(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let least = beatsApart(a, b);
  for (let later = 1; later < b.length && least > 0; later += 1) {
    const apart = beatsApart(a, b, later);
    if (apart < least) least = apart;
  }
  return least;
}

/**
 * The theme of bars as a plain reader finds it: the bar that is nearest to all the others together; the first of equals.
 */
export function mostAlike(bars: readonly PageBar[]): PageBar | null {
  let best: PageBar | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const theme of bars) {
    const sum = bars.reduce((total, bar) => total + beatsApartAnyhow(bar.cells, theme.cells), 0);
    if (sum < least) {
      best = theme;
      least = sum;
    }
  }
  return best;
}

/** Everything one step from a theme: each displacement of it, and each of those with one beat exchanged. */
export function stepsFrom(theme: ArrayLike<number>, cells: number): readonly Uint16Array[] {
  const found: Uint16Array[] = [];
  for (let later = 0; later < theme.length; later += 1) {
    const moved = displaced(theme, later);
    found.push(moved);
    for (let beat = 0; beat < moved.length; beat += 1) {
      for (let cell = 0; cell < cells; cell += 1) {
        if (cell !== moved[beat]) found.push(moved.with(beat, cell));
      }
    }
  }
  return found;
}

/** Most beats that a joining bar takes from the theme before. */
export const BORROWED_BEATS = 2;
