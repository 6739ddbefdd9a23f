/**
 * Polishing a page: bars are exchanged one by one as long as the page gets no worse.
 *
 * Conventions: places from 0; difficulty never falls by an exchange.
 */
import type { Random } from '@shedbook/core';
import { type PageBar, SAME_POINTS } from './page-bar.ts';
import { neighbourCost, type PageAim, pageCost, phraseCost, wholeCost } from './page-cost.ts';
import { firstAtLeast, type Window } from './windows.ts';

/** Exchanges tried for each place, within bounds for the whole page. */
const EXCHANGES_PER_PLACE = 100;
const EXCHANGES_AT_MOST = 8_000;

/** Exchanges tried to mend what is left: steps above the bound. */
const MENDS = 600;

/** What polishing goes by. */
export interface PolishTask {
  /** In ascending order of points. */
  readonly candidates: readonly PageBar[];
  readonly aim: PageAim;
  /** Places that may change. */
  readonly places: readonly number[];
}

/** The cost of a place: its bar, and how it goes with its neighbours. */
function placeCost(page: readonly PageBar[], place: number, aim: PageAim): number {
  const bar = page[place] as PageBar;
  const before = page[place - 1];
  const after = page[place + 1];
  let cost = phraseCost(bar, aim);
  if (before) cost += neighbourCost(before, bar, place, aim);
  if (after) cost += neighbourCost(bar, after, place + 1, aim);
  return cost;
}

/** The candidates that keep difficulty from falling at a place, as a window. */
function between(page: readonly PageBar[], place: number, candidates: readonly PageBar[]): Window {
  const before = page[place - 1];
  const after = page[place + 1];
  return {
    from: before ? firstAtLeast(candidates, before.points) : 0,
    to: after ? firstAtLeast(candidates, after.points + SAME_POINTS) : candidates.length,
  };
}

/** Exchanges bars for others of a difficulty between their neighbours'. */
function exchange(page: PageBar[], task: PolishTask, random: Random): void {
  const { candidates, aim, places } = task;
  const costOf = wholeCost(aim);
  const used = new Set(page);
  let whole = costOf(page);
  const tries = Math.min(EXCHANGES_AT_MOST, EXCHANGES_PER_PLACE * places.length);
  for (let i = 0; i < tries; i += 1) {
    const place = places[random.below(places.length)] as number;
    const { from, to } = between(page, place, candidates);
    const bar = candidates[from + random.below(Math.max(1, to - from))] as PageBar;
    if (to <= from || used.has(bar)) continue;
    const old = page[place] as PageBar;
    const local = placeCost(page, place, aim);
    page[place] = bar;
    const changed = placeCost(page, place, aim);
    const changedWhole = costOf(page);
    if (changed + changedWhole > local + whole) {
      page[place] = old;
      continue;
    }
    whole = changedWhole;
    used.delete(old);
    used.add(bar);
  }
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
function mendsFor(page: readonly PageBar[], task: PolishTask, random: Random): readonly Mend[] {
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
  task: PolishTask,
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
export function mendSteps(page: readonly PageBar[], task: PolishTask, random: Random): readonly PageBar[] {
  const free = new Set(task.places);
  const costOf = wholeCost(task.aim);
  let best = page;
  let cost = pageCost(page, task.aim, costOf);
  for (let i = 0; i < MENDS; i += 1) {
    const mends = mendsFor(best, task, random);
    if (mends.length === 0) return best;
    const changed = tryMend(best, mends[random.below(mends.length)] as Mend, task, free, random);
    const changedCost = changed ? pageCost(changed, task.aim, costOf) : Number.POSITIVE_INFINITY;
    if (changed && changedCost < cost) {
      best = changed;
      cost = changedCost;
    }
  }
  return best;
}

/** A page at least as good as the one given, with the same bars in all but the places that may change. */
export function polishPage(page: readonly PageBar[], task: PolishTask, random: Random): readonly PageBar[] {
  if (task.places.length === 0) return page;
  const polished = [...page];
  exchange(polished, task, random);
  return mendSteps(polished, task, random);
}
