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
  overBudget,
  type PageAim,
  phraseCost,
  stepCost,
} from './page-cost.ts';
import { BORROWED_BEATS, beatsApart, beatsApartAnyhow, type Likeness, likeness } from './theme.ts';

/** What a line costs for each beat more than one by which it strays from its theme. */
const STRAYED = 4;

/** What a block costs for each share of a bar by which another line than its first is nearer to all of them; a whole bar costs this. */
const NOT_CENTRAL = 90;

/** What a block gains by having a theme that is a figure of the trade. */
const FIGURE_AS_THEME = 14;

/** What a block gains by what its lines make of its theme, and what that may not cost. */
export interface Gains {
  /** Cost that a line takes away which displaces the theme as it is. */
  readonly displaced: number;
  /** Cost that a line takes away which displaces the theme and changes one beat of it. */
  readonly nearlyDisplaced: number;
  /** Cost that a last line takes away which joins the theme with the one before. */
  readonly joins: number;
  /** Most that the line that displaces the theme, and the one after it, cost for the beats that change. */
  readonly displacing: number;
  /** What each beat costs that changes beyond those that may change on a page. */
  readonly overBudget: number;
  /** What a step costs that is as large as its bound and above it; no unit, as all costs. */
  readonly stepTooLarge: number;
  readonly shares: Shares;
}

/** Shares of the exchanges, summed up from the first to the last; the rest are blocks. */
export interface Shares {
  /** Share up to which a line is made like the one beside it. */
  readonly beside: number;
  /** Share up to which one is made of the theme. */
  readonly line: number;
  /** Share up to which one with a move is put. */
  readonly move: number;
  /** Share up to which one that joins the theme with the one before is put. */
  readonly join: number;
  /** Share up to which the theme is displaced. */
  readonly displaced: number;
  /** Share up to which a missing figure is put. */
  readonly figure: number;
  /** Share up to which a beat of a whole block is changed. */
  readonly beat: number;
}

/** While blocks are formed; displacing costs what its beats cost. */
export const FORMING: Gains = {
  displaced: 1,
  nearlyDisplaced: 1,
  joins: 1,
  displacing: Number.POSITIVE_INFINITY,
  overBudget: 30,
  stepTooLarge: 60,
  shares: { beside: 0.4, line: 0.5, move: 0.54, join: 0.56, displaced: 0.56, figure: 0.61, beat: 0.94 },
};

/**
 * When blocks stand and their drills are filled in, as far as the beats that may change on a page allow. A step above
 * its bound costs as much as a missed move does then: mending it afterwards would take a block apart.
 */
export const DRILLING: Gains = {
  displaced: 45,
  nearlyDisplaced: 20,
  joins: 38,
  displacing: 5,
  overBudget: 240,
  stepTooLarge: 600,
  shares: { beside: 0.25, line: 0.35, move: 0.39, join: 0.52, displaced: 0.58, figure: 0.63, beat: 0.94 },
};

/** A page on its way. */
export interface Loom {
  readonly aim: PageAim;
  /** Every place is in one of them; where one ends may change. */
  readonly blocks: Block[];
  /** The block of each place. */
  readonly blockOf: Uint16Array;
  readonly page: PageBar[];
  /** Whether the first line of each block is its theme; else lines are chosen one by one. */
  readonly isThemed: boolean;
  readonly tally: Tally;
  /** How many times what is missing weighs. */
  readonly need: number;
  readonly gains: Gains;
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
  /** By line of a block: beats by which it is apart from the other lines. */
  readonly sums: Uint16Array;
  /** By block: beats that change from line to line, as {@link blockCost} found it last. */
  readonly changed: Uint16Array;
}

function emptyTally(aim: PageAim, lines: number, blocks: number): Tally {
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
    sums: new Uint16Array(lines),
    changed: new Uint16Array(blocks),
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

/** What a loom is given: a page is changed in place, and so is where blocks end. */
export interface Warp {
  readonly aim: PageAim;
  readonly blocks: Block[];
  readonly page: PageBar[];
  readonly isThemed: boolean;
  /** How many times what is missing weighs. */
  readonly need: number;
  readonly gains: Gains;
}

/** A loom with a page on it. */
export function loomWith(warp: Warp): Loom {
  const loom = {
    ...warp,
    blockOf: blockOfPlaces(warp.blocks),
    tally: emptyTally(warp.aim, warp.page.length, warp.blocks.length),
  };
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
  return borrowed > 0 && borrowed <= BORROWED_BEATS;
}

/** The theme of a block: its first line; null where lines are chosen one by one. */
export function themeOfBlock({ page, blocks, isThemed }: Loom, index: number): PageBar | null {
  const block = blocks[index];
  return isThemed && block ? (page[block.start] as PageBar) : null;
}

/**
 * Beats by which another line of a block is nearer to all of its lines than the first.
 * @param sums how far each line is from the first; what it is from all of them is added
 */
function offCentre({ page, blocks }: Loom, index: number, sums: Uint16Array): number {
  const { start, length } = blocks[index] as Block;
  for (let line = 1; line < length; line += 1) {
    const { cells } = page[start + line] as PageBar;
    for (let other = line + 1; other < length; other += 1) {
      const apart = beatsApartAnyhow((page[start + other] as PageBar).cells, cells);
      sums[line] = (sums[line] as number) + apart;
      sums[other] = (sums[other] as number) + apart;
    }
  }
  const ofFirst = sums[0] as number;
  let least = ofFirst;
  for (let line = 1; line < length; line += 1) least = Math.min(least, sums[line] as number);
  return ofFirst - least;
}

/** What a block gains by a line that displaces its theme; nothing where a line does not. */
function displacementGain({ apart, later }: Likeness, gains: Gains): number {
  if (later === 0 || apart > 1) return 0;
  return apart === 0 ? gains.displaced : gains.nearlyDisplaced;
}

/** What the lines of a block cost for what they make of its theme. */
function themeCost(loom: Loom, index: number, theme: PageBar): number {
  const { page, aim, blocks, tally, gains } = loom;
  const { start, length } = blocks[index] as Block;
  const before = index > 0 ? themeOfBlock(loom, index - 1) : null;
  const { sums } = tally;
  let cost = aim.figures.has(theme) ? -FIGURE_AS_THEME : 0;
  let changed = 0;
  let gained = 0;
  let wasMoved = false;
  sums[0] = 0;
  for (let line = 1; line < length; line += 1) {
    const bar = page[start + line] as PageBar;
    const like = likeness(bar.cells, theme.cells);
    sums[0] += like.apart;
    sums[line] = like.apart;
    const beats = beatsApart((page[start + line - 1] as PageBar).cells, bar.cells);
    const gain = displacementGain(like, gains);
    const isMoved = gain > gained;
    const change = changeCost(beats, bar.cells.length);
    cost += isMoved || wasMoved ? Math.min(gains.displacing, change) : change;
    changed += beats;
    if (isMoved) gained = gain;
    wasMoved = isMoved;
    if (like.apart > 0) cost += STRAYED * (like.apart - 1);
    if (line === length - 1 && before && joins(bar, theme, before)) cost -= gains.joins;
  }
  tally.changed[index] = changed;
  return cost - gained + (NOT_CENTRAL * offCentre(loom, index, sums)) / theme.cells.length;
}

/** What the lines of a block cost, and the step into each of them. */
export function blockCost(loom: Loom, index: number): number {
  const { page, aim, blocks, gains } = loom;
  const { start, length } = blocks[index] as Block;
  const theme = themeOfBlock(loom, index);
  let cost = theme ? themeCost(loom, index, theme) : 0;
  for (let place = start; place < start + length; place += 1) {
    const bar = page[place] as PageBar;
    cost += phraseCost(bar, aim);
    if (place > 0)
      cost += stepCost(bar.points - (page[place - 1] as PageBar).points, aim, gains.stepTooLarge);
  }
  return cost;
}

/** What only the whole page shows, after the blocks have been looked at. */
export function wholeCost({ page, blocks, aim, tally, need, gains }: Loom): number {
  let changed = 0;
  for (let index = 0; index < blocks.length; index += 1) changed += tally.changed[index] as number;
  return (
    inventoryCost(tally, aim, page.length, need) +
    orderCost(page, tally.seen) +
    endsCost(page, aim) +
    gains.overBudget * overBudget(changed, page.length - blocks.length)
  );
}

/** What a page costs, block by block and as a whole. */
export function pageCost(loom: Loom): number {
  const blocks = loom.blocks.reduce((sum, _, index) => sum + blockCost(loom, index), 0);
  return blocks + wholeCost(loom);
}
