/**
 * Mending a page: where a step of difficulty is still above its bound, a bar is exchanged for one between.
 *
 * Conventions: places from 0; difficulty never falls by an exchange.
 */
import type { Random } from '@shedbook/core';
import { BLOCK_LINES, type Block, type BlockedPage, blockOfPlaces } from './blocks.ts';
import { FORMING, loomWith, pageCost } from './loom.ts';
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
  /** Whether the first line of each block is its theme. */
  readonly isThemed: boolean;
}

/** Free places next to one another round a place, as a window. */
function freeAround(place: number, free: ReadonlySet<number>): Window {
  let from = place;
  let to = place + 1;
  while (free.has(from - 1)) from -= 1;
  while (free.has(to)) to += 1;
  return { from, to };
}

/** A bar for a place that may change. */
interface Exchange {
  readonly place: number;
  readonly bar: PageBar;
}

/** Blocks of so many lines, one after another. */
function laidOut(lengths: readonly number[]): readonly Block[] {
  let start = 0;
  return lengths.map((length) => {
    const block = { start, length };
    start += length;
    return block;
  });
}

/**
 * Blocks of which one has a line less and another a line more: what would be no block any more goes to the one before it
 * or after it, and one that gets too long is halved.
 */
function withLineMoved(blocks: readonly Block[], from: number, to: number): readonly Block[] {
  if (from === to) return blocks;
  const lengths = blocks.map(({ length }, i) => length + (i === to ? 1 : 0) - (i === from ? 1 : 0));
  const left = lengths[from] as number;
  const host = [from - 1, from + 1].find((each) => lengths[each] !== undefined);
  const kept =
    left >= BLOCK_LINES.least || host === undefined
      ? lengths
      : lengths.with(host, (lengths[host] as number) + left).toSpliced(from, 1);
  return laidOut(
    kept.flatMap((each) => (each > BLOCK_LINES.most ? [Math.ceil(each / 2), Math.floor(each / 2)] : [each])),
  );
}

/**
 * The page with another bar in place of one, put where its difficulty belongs among its free neighbours, into the block of
 * the line before it. Blocks without themes stay as they are.
 */
function exchanged(
  { bars, blocks }: BlockedPage,
  { place, bar }: Exchange,
  free: ReadonlySet<number>,
  isThemed: boolean,
): BlockedPage {
  const { from, to } = freeAround(place, free);
  const stretch = bars.slice(from, to);
  stretch.splice(place - from, 1);
  const found = stretch.findIndex((each) => each.points > bar.points);
  const at = found < 0 ? stretch.length : found;
  stretch.splice(at, 0, bar);
  const laid = [...bars.slice(0, from), ...stretch, ...bars.slice(to)];
  if (!isThemed) return { bars: laid, blocks };
  const blockOf = blockOfPlaces(blocks);
  const before = Math.max(0, from + at - 1);
  const host = blockOf[before >= place ? before + 1 : before] as number;
  return { bars: laid, blocks: withLineMoved(blocks, blockOf[place] as number, host) };
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
function tryMend(page: BlockedPage, mend: Mend, task: MendTask, free: ReadonlySet<number>, random: Random) {
  const from = firstAtLeast(task.candidates, mend.least);
  const to = firstAtLeast(task.candidates, mend.most);
  const bar = task.candidates[from + random.below(Math.max(1, to - from))] as PageBar;
  const around = freeAround(mend.place, free);
  const low = page.bars[around.from - 1]?.points ?? Number.NEGATIVE_INFINITY;
  const high = page.bars[around.to]?.points ?? Number.POSITIVE_INFINITY;
  if (to <= from || page.bars.includes(bar) || bar.points < low || bar.points > high) return null;
  return exchanged(page, { place: mend.place, bar }, free, task.isThemed);
}

/** What a page costs; themes are left aside where only steps are to be mended. */
function costOf({ bars, blocks }: BlockedPage, aim: PageAim, isThemed: boolean): number {
  return pageCost(
    loomWith({ aim, blocks: [...blocks], page: [...bars], isThemed, need: NEED, gains: FORMING }),
  );
}

/** Exchanges bars as long as a step is above its bound and the page gets better. */
function mendWhile(page: BlockedPage, task: MendTask, random: Random, isThemed: boolean): BlockedPage {
  const free = new Set(task.places);
  let best = page;
  let cost = costOf(page, task.aim, isThemed);
  for (let i = 0; i < MENDS; i += 1) {
    const mends = mendsFor(best.bars, task, random);
    if (mends.length === 0) return best;
    const changed = tryMend(best, mends[random.below(mends.length)] as Mend, task, free, random);
    const changedCost = changed ? costOf(changed, task.aim, isThemed) : Number.POSITIVE_INFINITY;
    if (changed && changedCost < cost) {
      best = changed;
      cost = changedCost;
    }
  }
  return best;
}

/**
 * Mends steps by exchanging a bar for one of another difficulty; lines stay with their blocks, and themes are given up
 * where a step cannot be mended otherwise.
 */
export function mendSteps(page: BlockedPage, task: MendTask, random: Random): BlockedPage {
  const mended = task.isThemed ? mendWhile(page, task, random, true) : page;
  return mendWhile(mended, task, random, false);
}
