/**
 * Mending a page: where a step of difficulty is still above its bound, a bar is exchanged for one between.
 *
 * Conventions: places from 0; difficulty never falls by an exchange.
 */
import type { Random } from '@shedbook/core';
import { loomWith, pageCost } from './loom.ts';
import { type PageBar, SAME_POINTS } from './page-bar.ts';
import type { PageAim } from './page-cost.ts';
import { firstAtLeast, type Window } from './windows.ts';

/** Exchanges tried to mend what is left: steps above the bound. */
const MENDS = 600;

/** What is missing weighs far more than anything else here. */
const NEED = 1_000;

/** What mending goes by. */
export interface MendTask {
  /** In ascending order of points. */
  readonly candidates: readonly PageBar[];
  readonly aim: PageAim;
  /** Places that may change. */
  readonly places: readonly number[];
}

/** Free places next to one another round a place, as a window. */
function freeAround(place: number, free: ReadonlySet<number>): Window {
  let from = place;
  let to = place + 1;
  while (free.has(from - 1)) from -= 1;
  while (free.has(to)) to += 1;
  return { from, to };
}

/** The page with another bar in place of one, put where its difficulty belongs among its free neighbours. */
function exchanged(
  page: readonly PageBar[],
  place: number,
  bar: PageBar,
  free: ReadonlySet<number>,
): readonly PageBar[] {
  const { from, to } = freeAround(place, free);
  const stretch = page.slice(from, to);
  stretch.splice(place - from, 1);
  const at = stretch.findIndex((each) => each.points > bar.points);
  stretch.splice(at < 0 ? stretch.length : at, 0, bar);
  return [...page.slice(0, from), ...stretch, ...page.slice(to)];
}

/** An exchange that may mend a step: a place to change, and the points that the new bar should lie between. */
interface Mend {
  readonly place: number;
  readonly least: number;
  readonly most: number;
}

/** Exchanges that may mend a step above the bound. */
function mendsFor(page: readonly PageBar[], task: MendTask, random: Random): readonly Mend[] {
  const { aim, places } = task;
  return page.flatMap((bar, i): readonly Mend[] => {
    const before = page[i - 1];
    if (!before || bar.points - before.points <= aim.stepBound + SAME_POINTS) return [];
    return [{ place: places[random.below(places.length)] as number, least: before.points, most: bar.points }];
  });
}

/** The page with one of its faults mended by another bar, or null where the bar drawn does not fit. */
function tryMend(
  page: readonly PageBar[],
  mend: Mend,
  task: MendTask,
  free: ReadonlySet<number>,
  random: Random,
) {
  const from = firstAtLeast(task.candidates, mend.least);
  const to = firstAtLeast(task.candidates, mend.most);
  const bar = task.candidates[from + random.below(Math.max(1, to - from))] as PageBar;
  const around = freeAround(mend.place, free);
  const low = page[around.from - 1]?.points ?? Number.NEGATIVE_INFINITY;
  const high = page[around.to]?.points ?? Number.POSITIVE_INFINITY;
  if (to <= from || page.includes(bar) || bar.points < low || bar.points > high) return null;
  return exchanged(page, mend.place, bar, free);
}

/** Mends steps by exchanging a bar for one of another difficulty, as long as the page gets better. */
export function mendSteps(page: readonly PageBar[], task: MendTask, random: Random): readonly PageBar[] {
  const free = new Set(task.places);
  const costOf = (bars: readonly PageBar[]) =>
    pageCost(loomWith({ aim: task.aim, blocks: [], page: [...bars], themes: [], need: NEED }));
  let best = page;
  let cost = costOf(page);
  for (let i = 0; i < MENDS; i += 1) {
    const mends = mendsFor(best, task, random);
    if (mends.length === 0) return best;
    const changed = tryMend(best, mends[random.below(mends.length)] as Mend, task, free, random);
    const changedCost = changed ? costOf(changed) : Number.POSITIVE_INFINITY;
    if (changed && changedCost < cost) {
      best = changed;
      cost = changedCost;
    }
  }
  return best;
}
