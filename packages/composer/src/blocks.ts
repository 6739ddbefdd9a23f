/**
 * Blocks: the lines of a page that belong to one theme.
 *
 * Conventions: places from 0; every place is in one block.
 */

import type { PageBar } from './page-bar.ts';

/** Lines in a block, about: three or four stand together on a page and are gone through as one drill (common practice). */
const LINES = 3.5;

/** Lines in a block where there are many moves to meet: neighbours that are alike share their moves. */
const FEW_LINES = 3;

/** Moves to be met, as a share of those that the page has room for, above which they are many. */
const MANY_MOVES = 0.255;

/** Lines in a block at least, about, and the share of moves above which it has so few: eight cells on a page of 32 lines. */
const FEWEST_LINES = 2.3;
const MOST_MOVES = 0.45;

/** Lines in a block, about, for moves to be met as a share of those that the page has room for. */
function linesInBlock(moves: number): number {
  if (moves > MOST_MOVES) return FEWEST_LINES;
  return isTight(moves) ? FEW_LINES : LINES;
}

/** Whether moves are many for the lines of a page. @param moves as a share of those that it has room for */
export function isTight(moves: number): boolean {
  return moves > MANY_MOVES;
}

/** A run of places that belong together. */
export interface Block {
  /** First place, from 0. */
  readonly start: number;
  /** Number of lines. */
  readonly length: number;
}

/** Lines of a page and the blocks that they fall into. */
export interface BlockedPage {
  readonly bars: readonly PageBar[];
  readonly blocks: readonly Block[];
}

/** Blocks beside those that figures may head: what is easier than all of them, and what is harder. */
const BEYOND_FIGURES = 2;

/** How full a page is. */
export interface Crowding {
  /** Moves to be met, as a share of those that the page has room for. */
  readonly moves: number;
  /** Number of figures to be quoted. */
  readonly figures: number;
}

/** The blocks of a page of `count` lines, as even as can be, the longer ones first: one for each figure, where there is room. */
export function blocksOf(count: number, { moves, figures }: Crowding): readonly Block[] {
  const headed = Math.min(figures + BEYOND_FIGURES, Math.floor(count / FEWEST_LINES));
  const blocks = Math.max(1, Math.round(count / linesInBlock(moves)), headed);
  let start = 0;
  return Array.from({ length: count === 0 ? 0 : blocks }, (_, i) => {
    const length = Math.floor(count / blocks) + (i < count % blocks ? 1 : 0);
    const block = { start, length };
    start += length;
    return block;
  });
}

/** The block of each place. */
export function blockOfPlaces(blocks: readonly Block[]): Uint16Array {
  return Uint16Array.from(blocks.flatMap((block, i) => new Array<number>(block.length).fill(i)));
}

/** Fewest and most lines of a block of a woven page: fewer are no drill, more are a page of their own. */
export const BLOCK_LINES = { least: 2, most: 6 } as const;
