/**
 * What a page should be, as a cost to be made small: every move met, even small steps, no rotations side by side,
 * one new thing at a time, first cells and rests in turn.
 *
 * Conventions: no unit; only comparisons count. The shares are a teacher's judgement, ours: a move not met weighs
 * more than any of the rest.
 */
import { type Alphabet, type PageBar, SAME_POINTS } from './page-bar.ts';

const MISSED_MOVE = 100;
const STEP_TOO_LARGE = 60;
const ROTATIONS_SIDE_BY_SIDE = 30;
const CELL_TOO_NEW = 4;
const MOVE_TOO_NEW = 0.5;
const SAME_FIRST_CELL = 0.4;
const SAME_CELLS = 0.6;
const SAME_RESTS = 0.1;
const UNEVEN_FIRST_CELLS = 0.5;
const UNEVEN_USE = 0.5;
const UNEVEN_STEPS = 0.08;
const BARS_UNLIKE = 0.4;

/** New cells that the first bar, and every later bar, may bring. */
const NEW_CELLS = { first: 2, later: 1 } as const;

/** New moves that a bar may bring before it is a lot at once. */
const NEW_MOVES = 2;

/** What the cost is measured against. */
export interface PageAim {
  readonly alphabet: Alphabet;
  /** Moves to be met, as indices of pairs of cells. */
  readonly moves: readonly number[];
  /** Largest step that is allowed, in points. */
  readonly stepBound: number;
  /** Beats in a bar. */
  readonly beats: number;
  /** Step from each bar to the next if all were alike, in points. */
  readonly evenStep: number;
  readonly areRotations: (a: PageBar, b: PageBar) => boolean;
}

/** Sums over the whole page, with the room to work them out in. */
interface Tally {
  readonly metCells: Uint8Array;
  readonly metMoves: Uint8Array;
  readonly first: Float64Array;
  readonly use: Float64Array;
}

/** Working room for pages over an alphabet; used again and again. */
function tallyFor(alphabet: Alphabet): Tally {
  const n = alphabet.vocabulary;
  return {
    metCells: new Uint8Array(alphabet.cells.length),
    metMoves: new Uint8Array(n * n),
    first: new Float64Array(n),
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
  const first = bar.cells[0] as number;
  if (first < tally.first.length) tally.first[first] = (tally.first[first] as number) + 1;
  return fresh;
}

/** Notes a bar's moves; returns how many of them are new. */
function noteMoves(tally: Tally, bar: PageBar): number {
  let fresh = 0;
  for (const move of bar.moves) {
    if (tally.metMoves[move] === 0) fresh += 1;
    tally.metMoves[move] = 1;
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

/** The cost of what only the whole page shows: moves not met, too much that is new at once, uneven use of cells. */
export function wholeCost(aim: PageAim): (page: readonly PageBar[]) => number {
  const tally = tallyFor(aim.alphabet);
  return (page) => {
    clear(tally);
    let cost = 0;
    let beats = 0;
    let free: number = NEW_CELLS.first;
    for (const bar of page) {
      beats += bar.cells.length;
      cost += CELL_TOO_NEW * Math.max(0, noteCells(tally, bar) - free);
      cost += MOVE_TOO_NEW * Math.max(0, noteMoves(tally, bar) - NEW_MOVES);
      free = NEW_CELLS.later;
    }
    for (const move of aim.moves) if (tally.metMoves[move] === 0) cost += MISSED_MOVE;
    const inOne = beats / page.length;
    return (
      cost +
      UNEVEN_FIRST_CELLS * unevenness(tally.first, page.length) +
      (UNEVEN_USE * unevenness(tally.use, beats)) / inOne
    );
  };
}

/** The cost of two bars side by side. */
export function neighbourCost(a: PageBar, b: PageBar, aim: PageAim): number {
  const step = b.points - a.points;
  let cost = aim.evenStep > 0 ? UNEVEN_STEPS * (step / aim.evenStep - 1) ** 2 : 0;
  if (step > aim.stepBound + SAME_POINTS) cost += STEP_TOO_LARGE * (step / aim.stepBound);
  if (a.cells[0] === b.cells[0]) cost += SAME_FIRST_CELL;
  if (a.rests === b.rests) cost += SAME_RESTS;
  if (a.bag === b.bag) cost += SAME_CELLS;
  if (aim.areRotations(a, b)) cost += ROTATIONS_SIDE_BY_SIDE;
  return cost;
}

/** The cost of a bar by itself: a phrase of several bars is easier to hold when they are alike for the better part. */
export function phraseCost(bar: PageBar, aim: PageAim): number {
  let unlike = 0;
  for (let beat = aim.beats; beat < bar.cells.length; beat += 1) {
    if (bar.cells[beat] !== bar.cells[beat - aim.beats]) unlike += 1;
  }
  return BARS_UNLIKE * Math.max(0, unlike - aim.beats / 2);
}
