/** A page for one weak move: every bar has it, first alone, then in ever fuller company. */
import type { Lesson } from '@shedbook/core';
import { type ComposeOptions, pageSource } from './compose.ts';
import { type Composition, composePage } from './page.ts';
import type { Candidate } from './pool.ts';

/** A move between cells of the vocabulary, e.g. last triplet into rest: `..x` to `...`. */
export interface WeakMove {
  readonly from: string;
  readonly to: string;
}

/** A move that no page can have, since the vocabulary lacks one of its cells. */
export class NoSuchCellError extends RangeError {
  /** The text of the cell that is missing. */
  readonly cell: string;
  /** Texts of the cells that there are. */
  readonly cells: readonly string[];

  constructor(cell: string, cells: readonly string[]) {
    super(cell);
    this.cell = cell;
    this.cells = cells;
  }
}

function hasMove(bar: Candidate, from: number, to: number): boolean {
  return bar.cells.some((cell, beat) => cell === from && bar.cells[(beat + 1) % bar.cells.length] === to);
}

/**
 * Composes a page on which every exercise has a move.
 * @throws NoSuchCellError when a cell of the move is not in the vocabulary.
 */
export function composeWeakMove(lesson: Lesson, move: WeakMove, options: ComposeOptions = {}): Composition {
  const source = pageSource(lesson, options);
  const texts = source.rules.cells.map((cell) => cell.text);
  const from = texts.indexOf(move.from);
  const to = texts.indexOf(move.to);
  if (from < 0 || to < 0) throw new NoSuchCellError(from < 0 ? move.from : move.to, texts);
  const candidates = source.pool.candidates.filter((bar) => hasMove(bar, from, to));
  const grade = (cells: Uint16Array): Candidate | null => {
    const bar = source.pool.grade(cells);
    return bar && hasMove(bar, from, to) ? bar : null;
  };
  return composePage({ ...source, pool: { ...source.pool, candidates, grade }, moves: [[from, to]] });
}
