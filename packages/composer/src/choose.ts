/**
 * Choosing a page: which bars, in which order.
 *
 * Conventions: places from 0; difficulty never falls from one place to the next, unless kept bars do.
 */
import type { Random } from '@shedbook/core';
import { candidatesByMove, coverMoves } from './cover.ts';
import type { PageBar } from './page-bar.ts';
import type { PageAim } from './page-cost.ts';
import { polishPage } from './polish.ts';
import { type Stretch, stretchesOf, type Window, windowsOf } from './windows.ts';

/** How many windows a place reaches over, tried one after another until every move is met. */
const LOOSENESS = [0, 1, 3, Number.POSITIVE_INFINITY] as const;

/** Tries at covering for each looseness: a few for each place, and many when nothing else is left. */
const TRIES_PER_PLACE = 200;
const LAST_TRIES = 60_000;

/** What a page is chosen from and for. */
export interface PageTask {
  /** In ascending order of points. */
  readonly candidates: readonly PageBar[];
  readonly count: number;
  /** Bars that stay in their places. */
  readonly kept: ReadonlyMap<number, PageBar>;
  readonly aim: PageAim;
}

interface Draft {
  /** Free places in order, and the candidates taken for them. */
  readonly places: readonly number[];
  readonly taken: readonly number[];
  readonly missed: number;
}

function freePlaces(stretches: readonly Stretch[]): readonly number[] {
  return stretches.flatMap((stretch) => Array.from({ length: stretch.length }, (_, i) => stretch.start + i));
}

/** The unused index nearest to one, inside all candidates. */
function nearestUnused(index: number, size: number, used: ReadonlySet<number>): number {
  for (let away = 0; away < size; away += 1) {
    if (index + away < size && !used.has(index + away)) return index + away;
    if (index - away >= 0 && !used.has(index - away)) return index - away;
  }
  throw new RangeError('Internal error: more places than candidates');
}

/** A first candidate for each window, all different. */
function firstTaken(windows: readonly Window[], size: number, random: Random): readonly number[] {
  const used = new Set<number>();
  return windows.map(({ from, to }) => {
    const index = nearestUnused(from + random.below(Math.max(1, to - from)), size, used);
    used.add(index);
    return index;
  });
}

/** The candidates of each stretch put in ascending order. */
function inOrder(taken: readonly number[], stretches: readonly Stretch[]): readonly number[] {
  let done = 0;
  return stretches.flatMap((stretch) => {
    const own = taken.slice(done, done + stretch.length);
    done += stretch.length;
    return own.toSorted((a, b) => a - b);
  });
}

function draftPage(task: PageTask, stretches: readonly Stretch[], random: Random): Draft {
  const { candidates, aim, kept } = task;
  const byMove = candidatesByMove(candidates);
  const strict = stretches.flatMap((stretch) => windowsOf(candidates, stretch, 0));
  let taken = firstTaken(strict, candidates.length, random);
  let missed = Number.POSITIVE_INFINITY;
  for (const looseness of LOOSENESS) {
    const last = looseness === Number.POSITIVE_INFINITY;
    const result = coverMoves(
      {
        candidates,
        windows: stretches.flatMap((stretch) => windowsOf(candidates, stretch, looseness)),
        start: taken,
        kept: [...kept.values()],
        moves: aim.moves,
        tries: last ? LAST_TRIES : TRIES_PER_PLACE * task.count,
      },
      byMove,
      random,
    );
    if (result.missed.length < missed) {
      missed = result.missed.length;
      taken = inOrder(result.taken, stretches);
    }
    if (missed === 0) break;
  }
  return { places: freePlaces(stretches), taken, missed };
}

function layOut(task: PageTask, draft: Draft): PageBar[] {
  const page: PageBar[] = [];
  for (const [place, bar] of task.kept) page[place] = bar;
  draft.places.forEach((place, i) => {
    page[place] = task.candidates[draft.taken[i] as number] as PageBar;
  });
  return page;
}

/** The bars of a page in order: as many as asked, or as there are. */
export function choosePage(task: PageTask, random: Random): readonly PageBar[] {
  const { candidates } = task;
  const count = Math.min(task.count, candidates.length + task.kept.size);
  const kept = new Map([...task.kept].filter(([place]) => place < count));
  const fitted: PageTask = { ...task, count, kept };
  const least = candidates[0]?.points ?? 0;
  const most = candidates.at(-1)?.points ?? 0;
  const stretches = stretchesOf(kept, count, least, most);
  const draft = draftPage(fitted, stretches, random);
  const page = layOut(fitted, draft);
  return polishPage(page, { candidates, aim: task.aim, places: draft.places }, random);
}
