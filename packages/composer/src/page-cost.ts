/**
 * What a page should be, as a cost to be made small: every move met, even small steps, one new thing at a time; inside a
 * block neighbours alike, from block to block another first cell; the figures that everybody begins with quoted.
 *
 * Conventions: no unit; only comparisons count. The shares are a teacher's judgement, ours: a move or a figure not
 * met weighs more than any of the rest.
 */
import { type Alphabet, type PageBar, SAME_POINTS } from './page-bar.ts';
import { beatsApart } from './theme.ts';

const MISSED_MOVE = 100;
const STEP_TOO_LARGE = 60;
const MISSED_FIGURE = 110;
const CELL_TOO_NEW = 8;
const MOVE_TOO_NEW = 0.2;
const MOVE_MET_ONCE = 0.1;
const CELL_NEVER_FIRST = 30;
const LONG_COLUMN = 1;
const UNEVEN_USE = 0.5;
const UNEVEN_STEPS = 0.08;
const ENDS = 25;
const BARS_UNLIKE = 0.4;
const SAME_BAR = 20;

/** The cost of beats that change inside a block, by their share of the bar: one of four is the aim. */
const BEATS_CHANGED = 30;

/** New cells that the first bar, and every later bar, may bring. */
const NEW_CELLS = { first: 2, later: 1 } as const;

/** New moves that a bar may bring before it is a lot at once. */
const NEW_MOVES = 2;

/** Bars in a row that may begin alike before they make a column. */
const COLUMN = 5;

/** What the cost is measured against. */
export interface PageAim {
  readonly alphabet: Alphabet;
  /** Moves to be met, as indices of pairs of cells. */
  readonly moves: readonly number[];
  /** Keys of bars that are figures to be quoted. */
  readonly figures: ReadonlySet<string>;
  /** Largest step that is allowed, in points. */
  readonly stepBound: number;
  /** Beats in a bar. */
  readonly beats: number;
  /** Step from each bar to the next if all were alike, in points. */
  readonly evenStep: number;
  /** Points of the easiest and the hardest candidate. */
  readonly range: readonly [number, number];
  /** The block of each place, from 0. */
  readonly blockOf: readonly number[];
  /** Whether a bar may begin with a cell. */
  mayStart(cell: number): boolean;
}

/** Sums over the whole page, with the room to work them out in. */
interface Tally {
  readonly metCells: Uint8Array;
  readonly metMoves: Uint8Array;
  readonly first: Uint8Array;
  readonly use: Float64Array;
}

/** Working room for pages over an alphabet; used again and again. */
function tallyFor(alphabet: Alphabet): Tally {
  const n = alphabet.vocabulary;
  return {
    metCells: new Uint8Array(alphabet.cells.length),
    metMoves: new Uint8Array(n * n),
    first: new Uint8Array(alphabet.cells.length),
    use: new Float64Array(n),
  };
}

function clear(tally: Tally): void {
  tally.metCells.fill(0);
  tally.metMoves.fill(0);
  tally.first.fill(0);
  tally.use.fill(0);
}

/** Notes a bar's cells; returns how many of them are new. */
function noteCells(tally: Tally, bar: PageBar): number {
  let fresh = 0;
  for (let beat = 0; beat < bar.cells.length; beat += 1) {
    const cell = bar.cells[beat] as number;
    if (tally.metCells[cell] === 0) fresh += 1;
    tally.metCells[cell] = 1;
    if (cell < tally.use.length) tally.use[cell] = (tally.use[cell] as number) + 1;
  }
  tally.first[bar.cells[0] as number] = 1;
  return fresh;
}

/** Notes a bar's moves; returns how many of them are new. */
function noteMoves(tally: Tally, bar: PageBar): number {
  let fresh = 0;
  for (const move of bar.moves) {
    const times = tally.metMoves[move] as number;
    if (times === 0) fresh += 1;
    if (times < 2) tally.metMoves[move] = times + 1;
  }
  return fresh;
}

/** Squared distance from an even spread, per item. */
function unevenness(counts: Float64Array, total: number): number {
  const even = total / counts.length;
  let sum = 0;
  for (const count of counts) sum += (count - even) ** 2;
  return sum / total;
}

/** The cost of columns: bars in a row that begin with the same cell, beyond what a block asks for. */
function columnCost(page: readonly PageBar[]): number {
  let cost = 0;
  let run = 0;
  page.forEach((bar, i) => {
    run = page[i - 1]?.cells[0] === bar.cells[0] ? run + 1 : 1;
    if (run > COLUMN) cost += LONG_COLUMN;
  });
  return cost;
}

/** What new cells and moves of a page cost, bar by bar; the tally is filled on the way. */
function newnessCost(page: readonly PageBar[], tally: Tally): number {
  let cost = 0;
  let free: number = NEW_CELLS.first;
  for (const bar of page) {
    cost += CELL_TOO_NEW * Math.max(0, noteCells(tally, bar) - free);
    cost += MOVE_TOO_NEW * Math.max(0, noteMoves(tally, bar) - NEW_MOVES);
    free = NEW_CELLS.later;
  }
  return cost;
}

/**
 * The cost of what only the whole page shows: moves and figures not met, too much that is new at once, columns.
 * @param strictness what a move or a figure not met weighs, as a share of what it weighs in the end
 */
export function wholeCost(aim: PageAim): (page: readonly PageBar[], strictness?: number) => number {
  const tally = tallyFor(aim.alphabet);
  const firsts = Array.from({ length: aim.alphabet.vocabulary }, (_, i) => i).filter((i) => aim.mayStart(i));
  return (page, strictness = 1) => {
    clear(tally);
    let cost = newnessCost(page, tally) + columnCost(page);
    for (const move of aim.moves) {
      const times = tally.metMoves[move] as number;
      if (times === 0) cost += MISSED_MOVE * strictness;
      else if (times === 1) cost += MOVE_MET_ONCE;
    }
    if (aim.figures.size > 0) {
      const quoted = page.filter((bar) => aim.figures.has(bar.key)).length;
      cost += MISSED_FIGURE * strictness * (aim.figures.size - quoted);
    }
    for (const first of firsts) if (tally.first[first] === 0) cost += CELL_NEVER_FIRST;
    return cost + (UNEVEN_USE * unevenness(tally.use, page.length * aim.beats)) / aim.beats;
  };
}

/** The cost of a step of difficulty between neighbours. */
export function stepCost(step: number, aim: PageAim): number {
  const uneven = aim.evenStep > 0 ? UNEVEN_STEPS * (step / aim.evenStep - 1) ** 2 : 0;
  return step > aim.stepBound + SAME_POINTS ? uneven + STEP_TOO_LARGE * (step / aim.stepBound) : uneven;
}

/** The cost of a bar changing into the next one of its block. */
export function changeCost(a: PageBar, b: PageBar, aim: PageAim): number {
  const apart = beatsApart(a.cells, b.cells);
  if (apart === 0) return SAME_BAR;
  const more = (apart - 1) / Math.max(1, a.cells.length);
  return BEATS_CHANGED * more * Math.max(more, 1 / aim.beats);
}

/** The cost of two bars side by side; `place` is that of the second. */
export function neighbourCost(a: PageBar, b: PageBar, place: number, aim: PageAim): number {
  const cost = stepCost(b.points - a.points, aim);
  return aim.blockOf[place] === aim.blockOf[place - 1] ? cost + changeCost(a, b, aim) : cost;
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
function endsCost(page: readonly PageBar[], aim: PageAim): number {
  const [least, most] = aim.range;
  const above = (page[0]?.points ?? least) - least;
  const below = most - (page.at(-1)?.points ?? most);
  if (aim.evenStep <= 0) return 0;
  return ENDS * ((above / aim.evenStep) ** 2 + Math.max(0, below / aim.evenStep - 1) ** 2);
}

/** The cost of a page, all in all. */
export function pageCost(
  page: readonly PageBar[],
  aim: PageAim,
  costOf: (page: readonly PageBar[], strictness?: number) => number,
  strictness = 1,
): number {
  let cost = costOf(page, strictness) + endsCost(page, aim);
  for (let place = 0; place < page.length; place += 1) {
    const bar = page[place] as PageBar;
    cost += phraseCost(bar, aim);
    const before = page[place - 1];
    if (before) cost += neighbourCost(before, bar, place, aim);
  }
  return cost;
}
