/**
 * What a page should be, as a cost to be made small: every move met, even small steps, no rotations side by side,
 * one new thing at a time, first cells and rests in turn.
 *
 * Conventions: no unit; only comparisons count. The shares are a teacher's judgement, ours: a move not met weighs
 * more than any of the rest.
 */
import type { Alphabet, PageBar } from './page-bar.ts';

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
const BARS_UNLIKE = 0.15;

/** New cells that the first bar, and every later bar, may bring. */
const NEW_CELLS = { first: 2, later: 1 } as const;

/** New moves that a bar may bring before it is a lot at once. */
const NEW_MOVES = 2;

/** What the cost is measured against. */
export interface PageAim {
  readonly alphabet: Alphabet;
  /** Moves to be met. */
  readonly moves: readonly number[];
  /** Largest step that is allowed, in points. */
  readonly stepBound: number;
  /** Beats in a bar. */
  readonly beats: number;
  readonly areRotations: (a: PageBar, b: PageBar) => boolean;
}

/** How much each bar asks for the first time. */
function newsCost(
  page: readonly PageBar[],
  aim: PageAim,
): { readonly cost: number; readonly met: Uint8Array } {
  const n = aim.alphabet.vocabulary;
  const metCells = new Uint8Array(aim.alphabet.cells.length);
  const met = new Uint8Array(n * n);
  let cost = 0;
  page.forEach((bar, place) => {
    let newCells = 0;
    for (let beat = 0; beat < bar.cells.length; beat += 1) {
      const cell = bar.cells[beat] as number;
      if (metCells[cell] === 0) newCells += 1;
      metCells[cell] = 1;
    }
    let newMoves = 0;
    for (const move of bar.moves) {
      if (met[move] === 0) newMoves += 1;
      met[move] = 1;
    }
    const free = place === 0 ? NEW_CELLS.first : NEW_CELLS.later;
    cost += CELL_TOO_NEW * Math.max(0, newCells - free) + MOVE_TOO_NEW * Math.max(0, newMoves - NEW_MOVES);
  });
  return { cost, met };
}

/** Squared distance from an even spread, per item. */
function unevenness(counts: readonly number[], total: number): number {
  const even = total / counts.length;
  let sum = 0;
  for (const count of counts) sum += (count - even) ** 2;
  return sum / total;
}

function spreadCost(page: readonly PageBar[], aim: PageAim): number {
  const n = aim.alphabet.vocabulary;
  const first = new Array<number>(n).fill(0);
  const use = new Array<number>(n).fill(0);
  let beats = 0;
  for (const bar of page) {
    beats += bar.cells.length;
    for (let beat = 0; beat < bar.cells.length; beat += 1) {
      const cell = bar.cells[beat] as number;
      if (cell >= n) continue;
      use[cell] = (use[cell] as number) + 1;
      if (beat === 0) first[cell] = (first[cell] as number) + 1;
    }
  }
  return (
    UNEVEN_FIRST_CELLS * unevenness(first, page.length) +
    UNEVEN_USE * (n / beats) * unevenness(use, beats) * page.length
  );
}

function haveSameCells(a: PageBar, b: PageBar): boolean {
  if (a.strokes !== b.strokes || a.rests !== b.rests) return false;
  const counts = new Map<number, number>();
  for (let i = 0; i < a.cells.length; i += 1) {
    counts.set(a.cells[i] as number, (counts.get(a.cells[i] as number) ?? 0) + 1);
    counts.set(b.cells[i] as number, (counts.get(b.cells[i] as number) ?? 0) - 1);
  }
  return [...counts.values()].every((count) => count === 0);
}

/** What two neighbours cost. */
function neighbourCost(a: PageBar, b: PageBar, evenStep: number, aim: PageAim): number {
  const step = b.points - a.points;
  let cost = evenStep > 0 ? UNEVEN_STEPS * (step / evenStep - 1) ** 2 : 0;
  if (step > aim.stepBound + 1e-9) cost += STEP_TOO_LARGE * (step / aim.stepBound);
  if (a.cells[0] === b.cells[0]) cost += SAME_FIRST_CELL;
  if (a.rests === b.rests) cost += SAME_RESTS;
  if (haveSameCells(a, b)) cost += SAME_CELLS;
  if (aim.areRotations(a, b)) cost += ROTATIONS_SIDE_BY_SIDE;
  return cost;
}

/** A phrase of several bars is easier to hold when its bars are alike for the better part. */
function phraseCost(bar: PageBar, beats: number): number {
  let unlike = 0;
  for (let beat = beats; beat < bar.cells.length; beat += 1) {
    if (bar.cells[beat] !== bar.cells[beat - beats]) unlike += 1;
  }
  return BARS_UNLIKE * Math.max(0, unlike - beats / 2);
}

/** The cost of a page in its order; smaller is better. */
export function pageCost(page: readonly PageBar[], aim: PageAim): number {
  const news = newsCost(page, aim);
  let cost = news.cost + spreadCost(page, aim);
  for (const move of aim.moves) if (news.met[move] === 0) cost += MISSED_MOVE;
  const first = page[0]?.points ?? 0;
  const evenStep = ((page.at(-1)?.points ?? first) - first) / Math.max(1, page.length - 1);
  for (let i = 1; i < page.length; i += 1) {
    cost += neighbourCost(page[i - 1] as PageBar, page[i] as PageBar, evenStep, aim);
  }
  for (const bar of page) cost += phraseCost(bar, aim.beats);
  return cost;
}
