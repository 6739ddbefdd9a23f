/**
 * Choosing a page: which bars, in which order.
 *
 * Conventions: places from 0; difficulty never falls from one place to the next, unless kept bars do.
 */
import type { Random } from '@shedbook/core';
import { type AnnealTask, anneal } from './anneal.ts';
import type { BarStore } from './bar-store.ts';
import type { Block } from './blocks.ts';
import { candidatesByMove, coverMoves } from './cover.ts';
import { FORMING, loomWith } from './loom.ts';
import { mendSteps } from './mend.ts';
import type { PageBar } from './page-bar.ts';
import type { PageAim } from './page-cost.ts';
import { themesOf, type WovenPage, weavePage } from './weave.ts';
import { type Stretch, stretchesOf, type Window, windowsOf } from './windows.ts';

const ALL = Number.POSITIVE_INFINITY;

/** How many windows a place reaches over, tried one after another until every move is met. */
const LOOSENESS = [0, 1, 3, ALL, ALL, ALL, ALL] as const;

/** The attempt from which on the search starts anew instead of from the best so far. */
const ANEW = 4;

/** Tries at covering in an attempt: some for each place, and many when every candidate may be taken. */
const TRIES_PER_PLACE = 200;
const LOOSE_TRIES = 20_000;

/** Exchanges tried on a page whose lines are chosen one by one, for each place and at most; how many times what is missing weighs, and temperatures. */
const PLAIN_TRIES_PER_PLACE = 300;
const PLAIN_TRIES = 12_000;
const PLAIN_NEED = 1_000;
const NO_FIGURES: ReadonlySet<PageBar> = new Set();
const PLAIN_HEAT = { warm: 3, cool: 0.05 } as const;

/** What a page is chosen from and for. */
export interface PageTask {
  /** In ascending order of points. */
  readonly candidates: readonly PageBar[];
  readonly count: number;
  /** Bars that stay in their places. */
  readonly kept: ReadonlyMap<number, PageBar>;
  readonly aim: PageAim;
  readonly store: BarStore;
  readonly blocks: readonly Block[];
  /** Whether moves are many for the page's lines. */
  readonly isTight: boolean;
  /** Whether lines are chosen one by one, without themes. */
  readonly isPlain: boolean;
  /** Bars that are figures to be quoted. */
  readonly figures: readonly PageBar[];
}

/** With fewer lines than this many times what all moves need, there is no room for themes: every line is needed. */
const ROOM = 1.4;

/** Lines that a page with so many moves to meet needs at least if they are to have themes. @param inOne moves in a line */
export function linesForThemes(moves: number, inOne: number): number {
  return Math.max(3, Math.ceil((ROOM * moves) / inOne));
}

/** Whether a page has room for themes. */
function hasRoom({ count, aim, candidates }: PageTask): boolean {
  return count >= linesForThemes(aim.moves.length, candidates[0]?.cells.length ?? 1);
}

interface Draft {
  /** Free places in order, and the candidates taken for them. */
  readonly places: readonly number[];
  readonly taken: readonly number[];
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

/** Moves that no page of this size can meet: the places have fewer moves than there are. */
function unavoidable(task: PageTask): number {
  const inOne = task.candidates[0]?.cells.length ?? 1;
  return Math.max(0, task.aim.moves.length - task.count * inOne);
}

function draftPage(
  task: PageTask,
  stretches: readonly Stretch[],
  byMove: ReadonlyMap<number, readonly number[]>,
  random: Random,
): Draft {
  const { candidates, aim, kept } = task;
  const search = { candidates, kept: [...kept.values()], moves: aim.moves, enough: unavoidable(task) };
  let taken: readonly number[] | null = null;
  let missed = Number.POSITIVE_INFINITY;
  for (const [attempt, looseness] of LOOSENESS.entries()) {
    const windows = stretches.flatMap((stretch) => windowsOf(candidates, stretch, looseness));
    const start = attempt < ANEW && taken ? taken : firstTaken(windows, candidates.length, random);
    const tries = looseness === ALL ? LOOSE_TRIES : TRIES_PER_PLACE * task.count;
    const result = coverMoves({ ...search, windows, start, tries }, byMove, random);
    if (result.missed.length < missed) {
      missed = result.missed.length;
      taken = inOrder(result.taken, stretches);
    }
    if (missed <= search.enough) break;
  }
  return { places: freePlaces(stretches), taken: taken ?? [] };
}

function layOut(task: PageTask, draft: Draft): PageBar[] {
  const page: PageBar[] = [];
  for (const [place, bar] of task.kept) page[place] = bar;
  draft.places.forEach((place, i) => {
    page[place] = task.candidates[draft.taken[i] as number] as PageBar;
  });
  return page;
}

/** How many moves a page misses. */
function missedBy(page: readonly PageBar[], aim: PageAim): number {
  const met = new Set(page.flatMap((bar) => bar.moves));
  return aim.moves.filter((move) => !met.has(move)).length;
}

/** A page that rises, its bars chosen by chance. */
function anyPage(task: PageTask, stretches: readonly Stretch[], random: Random): PageBar[] {
  const windows = stretches.flatMap((stretch) => windowsOf(task.candidates, stretch, 0));
  const taken = inOrder(firstTaken(windows, task.candidates.length, random), stretches);
  return layOut(task, { places: freePlaces(stretches), taken });
}

/** Lines chosen one by one: every move first, then what else makes a page good; no line is left for figures. */
function plainPage(
  task: PageTask,
  stretches: readonly Stretch[],
  anneals: AnnealTask,
  random: Random,
): WovenPage {
  const aim = { ...task.aim, figures: NO_FIGURES };
  const blocks = [...task.blocks];
  const page = layOut(task, draftPage(task, stretches, anneals.byMove, random));
  const loom = loomWith({ aim, blocks, page, isThemed: false, need: PLAIN_NEED, gains: FORMING });
  const tries = Math.min(PLAIN_TRIES, PLAIN_TRIES_PER_PLACE * anneals.places.length);
  if (anneals.places.length > 0) anneal(loom, anneals, { ...PLAIN_HEAT, tries }, random);
  return { bars: page, blocks, themes: blocks.map(() => null) };
}

/** The bars of a page in order, as many as asked, or as there are, and the themes of its blocks. */
export function choosePage(task: PageTask, random: Random): WovenPage {
  const { candidates, kept, count, aim, store, figures } = task;
  const least = candidates[0]?.points ?? 0;
  const most = candidates.at(-1)?.points ?? 0;
  const stretches = stretchesOf(kept, count, least, most);
  const places = freePlaces(stretches);
  const anneals = { candidates, byMove: candidatesByMove(candidates), store, figures, places };
  const chosen = () => {
    if (task.isPlain || !hasRoom(task)) return plainPage(task, stretches, anneals, random);
    const woven = weavePage(anyPage(task, stretches, random), { ...task, ...anneals }, random);
    if (missedBy(woven.bars, aim) === 0) return woven;
    const plain = plainPage(task, stretches, anneals, random);
    return missedBy(plain.bars, aim) < missedBy(woven.bars, aim) ? plain : woven;
  };
  const { bars: page, blocks: woven, themes } = chosen();
  const isThemed = themes.some((theme) => theme !== null);
  const { bars, blocks } = mendSteps(
    { bars: page, blocks: woven },
    { candidates, aim, places, isThemed },
    random,
  );
  return { bars, blocks, themes: isThemed ? themesOf(bars, blocks) : themes };
}
