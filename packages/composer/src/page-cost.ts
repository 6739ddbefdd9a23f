/**
 * What a page should be, as a cost to be made small: every move met, even small steps, one new thing at a time; inside a
 * block neighbours alike, from block to block another first cell; the figures that everybody begins with quoted.
 *
 * Conventions: no unit; only comparisons count. The shares are a teacher's judgement, ours: a move or a figure not
 * met weighs more than any of the rest.
 */
import { type Alphabet, type PageBar, SAME_POINTS } from './page-bar.ts';

const MISSED_MOVE = 15;
const MISSED_FIGURE = 30;
const CELL_TOO_NEW = 8;
const MOVE_MET_ONCE = 0.1;
const CELL_NEVER_FIRST = 20;
const LONG_COLUMN = 1;
const UNEVEN_USE = 0.5;
const UNEVEN_STEPS = 0.02;
const BEGINS = 100;
const ENDS = 25;
const BARS_UNLIKE = 0.4;
const SAME_BAR = 20;

/** The cost of all beats of a bar changing inside a block; one beat costs nothing, each more its share. */
const BEATS_CHANGED = 86;

/** Beats that may change from line to line, on average over a page: under 1.5 is the goal. */
const MOST_CHANGED = 1.42;

/** New cells that the first bar, and every later bar, may bring. */
const NEW_CELLS = { first: 2, later: 1 } as const;

/** Bars in a row that may begin alike before they make a column. */
const COLUMN = 5;

/** What the cost is measured against. */
export interface PageAim {
  readonly alphabet: Alphabet;
  /** Moves to be met, as indices of pairs of cells. */
  readonly moves: readonly number[];
  /** Bars that are figures to be quoted. */
  readonly figures: ReadonlySet<PageBar>;
  /** Largest step that is allowed, in points. */
  readonly stepBound: number;
  /** Beats in a bar. */
  readonly beats: number;
  /** Step from each bar to the next if all were alike, in points. */
  readonly evenStep: number;
  /** Points of the easiest and the hardest candidate. */
  readonly range: readonly [number, number];
  /** Whether a bar may begin with a cell. */
  mayStart(cell: number): boolean;
}

/** What a page has of what is counted over all its lines, in whatever order they stand. */
export interface Inventory {
  /** Number of moves of the vocabulary that are not met. */
  readonly missedMoves: number;
  /** Number of moves that one line alone has. */
  readonly movesMetOnce: number;
  /** Number of figures that are not quoted. */
  readonly missedFigures: number;
  /** Number of cells that may begin a bar and begin none. */
  readonly cellsNeverFirst: number;
  /** Sum over the vocabulary of how often a cell is used, squared. */
  readonly useSquared: number;
  /** Number of beats that have a cell of the vocabulary. */
  readonly use: number;
}

/**
 * The cost of what a page has and lacks, in whatever order.
 * @param need how many times what is missing weighs
 */
export function inventoryCost(inventory: Inventory, aim: PageAim, lines: number, need: number): number {
  const { missedMoves, movesMetOnce, missedFigures, cellsNeverFirst, useSquared, use } = inventory;
  const beats = lines * aim.beats;
  const cells = Math.max(1, aim.alphabet.vocabulary);
  const even = beats / cells;
  const uneven = (useSquared - 2 * even * use + cells * even ** 2) / beats;
  return (
    need * (MISSED_MOVE * missedMoves + MISSED_FIGURE * missedFigures) +
    CELL_NEVER_FIRST * cellsNeverFirst +
    MOVE_MET_ONCE * movesMetOnce +
    (UNEVEN_USE * uneven) / aim.beats
  );
}

/** Notes the cells of a bar as seen. @returns how many of them are new. */
function seeCells(cells: ArrayLike<number>, seen: Uint8Array): number {
  let fresh = 0;
  for (let beat = 0; beat < cells.length; beat += 1) {
    const cell = cells[beat] as number;
    if (seen[cell] === 0) {
      seen[cell] = 1;
      fresh += 1;
    }
  }
  return fresh;
}

/** The cost of more than one new cell at once, and of columns: many bars in a row that begin alike. */
export function orderCost(page: readonly PageBar[], seen: Uint8Array): number {
  seen.fill(0);
  let unseen = seen.length;
  let cost = 0;
  let free: number = NEW_CELLS.first;
  let run = 0;
  let first = -1;
  for (let place = 0; place < page.length; place += 1) {
    const { cells } = page[place] as PageBar;
    if (unseen > 0) {
      const fresh = seeCells(cells, seen);
      unseen -= fresh;
      if (fresh > free) cost += CELL_TOO_NEW * (fresh - free);
      free = NEW_CELLS.later;
    }
    run = cells[0] === first ? run + 1 : 1;
    first = cells[0] as number;
    if (run > COLUMN) cost += LONG_COLUMN;
  }
  return cost;
}

/** The cost of a step of difficulty between neighbours. @param tooLarge what a step as large as its bound costs where it is above it */
export function stepCost(step: number, aim: PageAim, tooLarge: number): number {
  const uneven = aim.evenStep > 0 ? UNEVEN_STEPS * (step / aim.evenStep - 1) ** 2 : 0;
  return step > aim.stepBound + SAME_POINTS ? uneven + tooLarge * (step / aim.stepBound) : uneven;
}

/** The cost of so many beats of a bar changing to the next line of its block: one beat is what an idea asks for. */
export function changeCost(changed: number, beats: number): number {
  return changed === 0 ? SAME_BAR : BEATS_CHANGED * ((changed - 1) / Math.max(1, beats));
}

/**
 * Beats by which more change from line to line than are allowed on average.
 * @param changed beats that change inside the page's blocks, all together
 * @param steps lines that follow another one of their block
 */
export function overBudget(changed: number, steps: number): number {
  return Math.max(0, changed - MOST_CHANGED * steps);
}

/** The cost of a bar by itself: a phrase of several bars is easier to hold when they are alike for the better part. */
export function phraseCost(bar: PageBar, aim: PageAim): number {
  let unlike = 0;
  for (let beat = aim.beats; beat < bar.cells.length; beat += 1) {
    if (bar.cells[beat] !== bar.cells[beat - aim.beats]) unlike += 1;
  }
  return BARS_UNLIKE * Math.max(0, unlike - aim.beats / 2);
}

/** The cost of beginning above the easiest bars, and of ending below the hardest. */
export function endsCost(page: readonly PageBar[], aim: PageAim): number {
  const [least, most] = aim.range;
  const above = (page[0]?.points ?? least) - least;
  const below = most - (page.at(-1)?.points ?? most);
  if (aim.evenStep <= 0) return 0;
  return BEGINS * (above / aim.evenStep) + ENDS * Math.max(0, below / aim.evenStep - 1) ** 2;
}
