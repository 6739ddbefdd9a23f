/**
 * Weaving a page: each block is given a theme, and lines that state, displace, thin, fill and join it, while the whole
 * page meets its moves, quotes its figures and rises.
 *
 * Conventions: places from 0; difficulty in points never falls from one place to the next.
 */
import type { Random } from '@shedbook/core';
import { type AnnealTask, anneal, type Schedule } from './anneal.ts';
import type { Block, BlockedPage } from './blocks.ts';
import { DRILLING, FORMING, loomWith } from './loom.ts';
import { type PageBar, SAME_POINTS } from './page-bar.ts';
import type { PageAim } from './page-cost.ts';
import { beatsApart, beatsApartAnyhow, mostAlike } from './theme.ts';

/** Exchanges tried for each place: where moves are few for the page's lines, and where they are many. */
const TRIES = { roomy: 280, tight: 3400 } as const;

/** Temperatures, in cost. */
const WARM = 12;
const COOL = 0.15;

/** Times that a page is heated up again while a move or a figure is missing, what is missing weighing more each time. */
const AGAIN = 8;
const AGAIN_WARM = 4;
const AGAIN_NEED = 3;

/**
 * Times that it is heated up far more where that did not help: what is missing weighs little against the heat then, so
 * that a figure may take the place of a line with moves that no other has.
 */
const AFRESH = 4;
const AFRESH_WARM = 60;

/**
 * Exchanges tried at last, as a share of the first ones, when blocks stand and their drills are filled in; what is not
 * missing by then may not get lost.
 */
const DRILL_TRIES = 0.3;
const DRILL_WARM = 4;
const DRILL_NEED = 20;

/** Times at most that this is done, ever warmer, while a page is restless. */
const DRILLS = 4;

/**
 * Times at most that a page is woven, and beats that may change from line to line on average before it is woven anew: a
 * search may end where no exchange leads on.
 */
const WEAVINGS = 3;
const RESTLESS = 1.45;

/** What weaving goes by. */
export interface WeaveTask extends AnnealTask {
  readonly aim: PageAim;
  readonly blocks: readonly Block[];
  /** Whether moves are many for the page's lines. */
  readonly isTight: boolean;
}

/** A woven page: its bars, and the theme of each block. */
export interface WovenPage extends BlockedPage {
  /** By block. */
  readonly themes: readonly (PageBar | null)[];
}

/** Whether the page lacks a move or a figure. */
function lacks(page: readonly PageBar[], aim: PageAim): boolean {
  const met = new Set(page.flatMap((bar) => bar.moves));
  return aim.moves.some((move) => !met.has(move)) || [...aim.figures].some((bar) => !page.includes(bar));
}

/** Beats on which lines differ from a theme, all together. */
function strayedFrom(theme: PageBar, lines: readonly PageBar[]): number {
  return lines.reduce((sum, bar) => sum + beatsApartAnyhow(bar.cells, theme.cells), 0);
}

/** The theme of a block's lines: the first, where no other line is nearer to them all. */
function themeOf(lines: readonly PageBar[]): PageBar | null {
  const [first] = lines;
  const found = mostAlike(lines);
  if (!first || !found || lines.length < 2) return null;
  return strayedFrom(first, lines) <= strayedFrom(found, lines) ? first : found;
}

/** The theme of every block. */
export function themesOf(page: readonly PageBar[], blocks: readonly Block[]): readonly (PageBar | null)[] {
  return blocks.map(({ start, length }) => themeOf(page.slice(start, start + length)));
}

/** A page woven once. */
function wovenOnce(start: readonly PageBar[], task: WeaveTask, random: Random): BlockedPage {
  const { aim } = task;
  const blocks = [...task.blocks];
  const page = [...start];
  const tries = (task.isTight ? TRIES.tight : TRIES.roomy) * task.places.length;
  anneal(
    loomWith({ aim, blocks, page, isThemed: true, need: 1, gains: FORMING }),
    task,
    { tries, warm: WARM, cool: COOL },
    random,
  );
  for (let again = 1; again <= AGAIN + AFRESH && lacks(page, aim); again += 1) {
    const isAfresh = again > AGAIN;
    const loom = loomWith({
      aim,
      blocks,
      page,
      isThemed: true,
      need: isAfresh ? AGAIN_NEED : AGAIN_NEED ** again,
      gains: FORMING,
    });
    const warm = isAfresh ? AFRESH_WARM : AGAIN_WARM;
    anneal(loom, task, { tries: isAfresh ? tries : tries / 2, warm, cool: COOL }, random);
  }
  let woven: BlockedPage = { bars: page, blocks };
  for (let warmth = 1; warmth <= DRILLS; warmth += 1) {
    woven = drilled(
      woven,
      task,
      { tries: tries * DRILL_TRIES, warm: DRILL_WARM * warmth, cool: COOL },
      random,
    );
    if (unrest(woven, aim) <= RESTLESS) break;
  }
  return woven;
}

/** Beats that change from line to line inside the blocks of a page, all together, and the lines into which they do. */
function changes({ bars, blocks }: BlockedPage): { readonly changed: number; readonly steps: number } {
  const into = new Set(blocks.map(({ start }) => start));
  const inside = bars.flatMap((bar, i) =>
    into.has(i) ? [] : [beatsApart((bars[i - 1] ?? bar).cells, bar.cells)],
  );
  return { changed: inside.reduce((sum, each) => sum + each, 0), steps: inside.length };
}

/**
 * Beats that change from line to line on average. A page with a step above its bound is worse than any without, since
 * mending it takes blocks apart; one that lacks a move or a figure is worse than any other.
 */
function unrest(page: BlockedPage, aim: PageAim): number {
  if (lacks(page.bars, aim)) return Number.POSITIVE_INFINITY;
  const { changed, steps } = changes(page);
  const steep = risesEvenly(page, aim) ? 0 : (page.bars[0]?.cells.length ?? 0);
  return steep + changed / Math.max(1, steps);
}

/** A page woven from any page that rises; anew where it is restless, and the calmest is taken. */
export function weavePage(start: readonly PageBar[], task: WeaveTask, random: Random): WovenPage {
  const { aim } = task;
  let best = wovenOnce(start, task, random);
  for (let weaving = 1; weaving < WEAVINGS && unrest(best, aim) > RESTLESS; weaving += 1) {
    const other = wovenOnce(start, task, random);
    if (unrest(other, aim) < unrest(best, aim)) best = other;
  }
  return { ...best, themes: themesOf(best.bars, best.blocks) };
}

/** Whether no step of difficulty is above its bound. */
function risesEvenly({ bars }: BlockedPage, { stepBound }: PageAim): boolean {
  return bars.every((bar, i) => bar.points - (bars[i - 1] ?? bar).points <= stepBound + SAME_POINTS);
}

/** A page with its drills filled in, or as it was, where that took a move or a figure from it. */
function drilled(woven: BlockedPage, task: WeaveTask, schedule: Schedule, random: Random): BlockedPage {
  const { aim } = task;
  const [page, blocks] = [[...woven.bars], [...woven.blocks]];
  const loom = loomWith({ aim, blocks, page, isThemed: true, need: DRILL_NEED, gains: DRILLING });
  anneal(loom, task, schedule, random);
  return lacks(page, aim) ? woven : { bars: page, blocks };
}
