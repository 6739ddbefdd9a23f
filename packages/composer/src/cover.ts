/**
 * Covering: taking bars so that together they make every move between cells.
 *
 * Conventions: `places` are those of the page that are free; each has a window of candidates.
 * Source: maximum coverage under a partition matroid by local search with moves on a plateau; an exact search on
 * small cases is its check (see the tests).
 */
import type { Random } from '@shedbook/core';
import type { PageBar } from './page-bar.ts';
import { firstIndexAtLeast } from './sorted.ts';
import type { Window } from './windows.ts';

/** What a search for coverage starts from. */
export interface CoverTask {
  readonly candidates: readonly PageBar[];
  /** Window of each free place. */
  readonly windows: readonly Window[];
  /** Indices of candidates taken at first, one for each free place, all different. */
  readonly start: readonly number[];
  readonly kept: readonly PageBar[];
  /** Moves to be covered, as indices of pairs of cells. */
  readonly moves: readonly number[];
  /** So small a number of missed moves is enough. */
  readonly enough: number;
  /** How often the search tries. */
  readonly tries: number;
}

/** What a search for coverage came to. */
export interface CoverResult {
  /** Indices of the candidates taken, one for each free place. */
  readonly taken: readonly number[];
  readonly missed: readonly number[];
}

/** Candidates that make each move, by index, ascending. */
export function candidatesByMove(candidates: readonly PageBar[]): ReadonlyMap<number, readonly number[]> {
  const byMove = new Map<number, number[]>();
  candidates.forEach((bar, index) => {
    for (const move of bar.moves) {
      const list = byMove.get(move);
      if (list) list.push(index);
      else byMove.set(move, [index]);
    }
  });
  return byMove;
}

interface Cover {
  readonly counts: Map<number, number>;
  readonly missing: Set<number>;
}

function add(cover: Cover, bar: PageBar): void {
  for (const move of bar.moves) {
    cover.counts.set(move, (cover.counts.get(move) ?? 0) + 1);
    cover.missing.delete(move);
  }
}

function remove(cover: Cover, bar: PageBar, wanted: ReadonlySet<number>): void {
  for (const move of bar.moves) {
    const left = (cover.counts.get(move) ?? 0) - 1;
    cover.counts.set(move, left);
    if (left === 0 && wanted.has(move)) cover.missing.add(move);
  }
}

/** Searches for bars that make all moves; the best that was found. */
export function coverMoves(
  task: CoverTask,
  byMove: ReadonlyMap<number, readonly number[]>,
  random: Random,
): CoverResult {
  const { candidates, windows } = task;
  const wanted = new Set(task.moves);
  const taken = [...task.start];
  const used = new Set(taken);
  const cover: Cover = { counts: new Map(), missing: new Set(task.moves) };
  for (const bar of [...task.kept, ...taken.map((index) => candidates[index] as PageBar)]) add(cover, bar);
  let best: CoverResult = { taken: [...taken], missed: [...cover.missing] };
  for (let i = 0; i < task.tries && cover.missing.size > task.enough && taken.length > 0; i += 1) {
    const missing = [...cover.missing];
    const move = missing[random.below(missing.length)] as number;
    const place = random.below(taken.length);
    const { from, to } = windows[place] as Window;
    const list = byMove.get(move) ?? [];
    const first = firstIndexAtLeast(list, from);
    const choices = firstIndexAtLeast(list, to) - first;
    if (choices <= 0) continue;
    const index = list[first + random.below(choices)] as number;
    if (used.has(index)) continue;
    const old = taken[place] as number;
    const before = cover.missing.size;
    remove(cover, candidates[old] as PageBar, wanted);
    add(cover, candidates[index] as PageBar);
    if (cover.missing.size > before) {
      remove(cover, candidates[index] as PageBar, wanted);
      add(cover, candidates[old] as PageBar);
      continue;
    }
    taken[place] = index;
    used.delete(old);
    used.add(index);
    if (cover.missing.size < best.missed.length) best = { taken: [...taken], missed: [...cover.missing] };
  }
  return best;
}
