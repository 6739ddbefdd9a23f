/**
 * The loom: a page in the making, the theme of each of its blocks, and what both cost together.
 *
 * Conventions: places from 0; costs have no unit, only comparisons count. What a page has is counted as lines come and
 * go, so that an exchange is weighed by looking at one block and at the order of the lines.
 */
import { type Block, blockOfPlaces } from './blocks.ts';
import type { PageBar } from './page-bar.ts';
import {
  changeCost,
  endsCost,
  type Inventory,
  inventoryCost,
  orderCost,
  type PageAim,
  phraseCost,
  stepCost,
} from './page-cost.ts';
import { likeness } from './theme.ts';

/** What a line costs for each beat more than one by which it strays from its theme. */
const STRAYED = 6;

/** What a block costs that does not state its theme. */
const UNSTATED = 8;

/** What a block costs for each line that comes before its theme: an idea is heard first, then what is made of it. */
const LATE = 2;

/**
 * What is gained by a line that displaces the theme, by one that joins it with the theme before, and by a theme that is a
 * figure of the trade.
 */
const GAINS = { displaced: 0.8, joins: 0.8, figure: 3 } as const;

/** Most beats that a joining line takes from the theme before. */
const BORROWED = 2;

/** A page on its way. */
export interface Loom {
  readonly aim: PageAim;
  /** Every place is in one of them; where one ends may change. */
  readonly blocks: Block[];
  /** The block of each place. */
  readonly blockOf: Uint16Array;
  readonly page: PageBar[];
  /** By block; null where lines are chosen one by one. */
  readonly themes: (PageBar | null)[];
  readonly tally: Tally;
  /** How many times what is missing weighs. */
  readonly need: number;
}

/** Counts of what the page has, kept up to date by {@link count}. */
interface Tally extends Inventory {
  missedMoves: number;
  movesMetOnce: number;
  missedFigures: number;
  cellsNeverFirst: number;
  useSquared: number;
  use: number;
  /** By move: how many lines have it; moves that the page does not ask for are not counted. */
  readonly moves: Int16Array;
  readonly isWanted: Uint8Array;
  /** By cell: how many lines begin with it, and how often it is used. */
  readonly first: Int16Array;
  readonly uses: Int16Array;
  readonly mayStart: Uint8Array;
  /** Room for looking at the order of the lines. */
  readonly seen: Uint8Array;
}

function emptyTally(aim: PageAim): Tally {
  const { vocabulary: n, cells } = aim.alphabet;
  const isWanted = new Uint8Array(n * n);
  for (const move of aim.moves) isWanted[move] = 1;
  const mayStart = Uint8Array.from(cells, (_, cell) => (cell < n && aim.mayStart(cell) ? 1 : 0));
  return {
    missedMoves: aim.moves.length,
    movesMetOnce: 0,
    missedFigures: aim.figures.size,
    cellsNeverFirst: mayStart.reduce((sum, each) => sum + each, 0),
    useSquared: 0,
    use: 0,
    moves: new Int16Array(n * n),
    isWanted,
    first: new Int16Array(cells.length),
    uses: new Int16Array(n),
    mayStart,
    seen: new Uint8Array(cells.length),
  };
}

/** Notes that a line comes (1) or goes (−1). */
export function count({ aim, tally }: Loom, bar: PageBar, by: 1 | -1): void {
  const { moves, isWanted, first, uses, mayStart } = tally;
  const { cells } = bar;
  for (let i = 0; i < bar.moves.length; i += 1) {
    const move = bar.moves[i] as number;
    if (isWanted[move] === 0) continue;
    const before = moves[move] as number;
    const after = before + by;
    moves[move] = after;
    if (before === 0) tally.missedMoves -= 1;
    else if (before === 1) tally.movesMetOnce -= 1;
    if (after === 0) tally.missedMoves += 1;
    else if (after === 1) tally.movesMetOnce += 1;
  }
  for (let beat = 0; beat < cells.length; beat += 1) {
    const cell = cells[beat] as number;
    if (cell >= uses.length) continue;
    const before = uses[cell] as number;
    uses[cell] = before + by;
    tally.useSquared += 2 * by * before + 1;
    tally.use += by;
  }
  const start = cells[0] as number;
  const times = first[start] as number;
  first[start] = times + by;
  if (mayStart[start] === 1 && times === (by === 1 ? 0 : 1)) tally.cellsNeverFirst -= by;
  if (aim.figures.has(bar)) tally.missedFigures -= by;
}

/** What a loom is given: a page and its blocks' themes are changed in place, and so is where blocks end. */
export interface Warp {
  readonly aim: PageAim;
  readonly blocks: Block[];
  readonly page: PageBar[];
  readonly themes: (PageBar | null)[];
  /** How many times what is missing weighs. */
  readonly need: number;
}

/** A loom with a page on it. */
export function loomWith(warp: Warp): Loom {
  const loom = { ...warp, blockOf: blockOfPlaces(warp.blocks), tally: emptyTally(warp.aim) };
  for (const bar of warp.page) count(loom, bar, 1);
  return loom;
}

/** Whether a line is its theme with a beat or two of the theme before, at their places. */
function joins(line: PageBar, theme: PageBar, before: PageBar): boolean {
  let borrowed = 0;
  for (let beat = 0; beat < theme.cells.length; beat += 1) {
    if (line.cells[beat] === theme.cells[beat]) continue;
    if (line.cells[beat] !== before.cells[beat]) return false;
    borrowed += 1;
  }
  return borrowed > 0 && borrowed <= BORROWED;
}

/** What a line of a block costs for how it goes with the block's theme; `before` is the theme that it may join. */
function thematicCost(line: PageBar, theme: PageBar, before: PageBar | null): number {
  if (before && joins(line, theme, before)) return -GAINS.joins;
  const { apart, later } = likeness(line.cells, theme.cells);
  if (apart === 0) return later > 0 ? -GAINS.displaced : 0;
  return STRAYED * (apart - 1);
}

/** What the lines of a block cost, and the step into each of them. */
export function blockCost({ page, aim, blocks, themes }: Loom, index: number): number {
  const { start, length } = blocks[index] as Block;
  const theme = themes[index] as PageBar | null;
  const end = start + length;
  let cost = 0;
  let isStated = theme === null;
  for (let place = start; place < end; place += 1) {
    const bar = page[place] as PageBar;
    cost += phraseCost(bar, aim);
    if (place > 0) {
      const before = page[place - 1] as PageBar;
      cost += stepCost(bar.points - before.points, aim);
      if (theme !== null && place > start) cost += changeCost(before, bar);
    }
    if (bar === theme) {
      isStated = true;
      cost += LATE * (place - start) - (aim.figures.has(bar) ? GAINS.figure : 0);
    } else if (theme !== null) {
      cost += thematicCost(
        bar,
        theme,
        place === end - 1 && index > 0 ? (themes[index - 1] as PageBar) : null,
      );
    }
  }
  return isStated ? cost : cost + UNSTATED;
}

/** What the step from a block to the line after it costs. */
export function costAfter({ page, aim, blocks }: Loom, index: number): number {
  const { start, length } = blocks[index] as Block;
  const after = page[start + length];
  return after ? stepCost(after.points - (page[start + length - 1] as PageBar).points, aim) : 0;
}

/** What only the whole page shows. */
export function wholeCost({ page, aim, tally, need }: Loom): number {
  return inventoryCost(tally, aim, page.length, need) + orderCost(page, tally.seen) + endsCost(page, aim);
}

/** What a page costs line by line and as a whole, themes left aside. */
export function pageCost(loom: Loom): number {
  const { page, aim } = loom;
  let cost = wholeCost(loom);
  for (let place = 1; place < page.length; place += 1) {
    cost += stepCost((page[place] as PageBar).points - (page[place - 1] as PageBar).points, aim);
  }
  return cost;
}
