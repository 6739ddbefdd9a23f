/**
 * A bar on its way to a page, with what choosing looks at: its moves, its rests, its strokes.
 *
 * Conventions: cells as indices into the vocabulary, followed by cells that only kept exercises use; a move is
 * `from · cells + to` and is noted only between cells of the vocabulary.
 */
import { type Cell, isRest, struckSlots } from '@shedbook/core';

/** Points that differ by less are the same: sums of floats. */
export const SAME_POINTS = 1e-9;

/** A bar that is, or may be, on the page. */
export interface PageBar {
  /** Cells as indices into the vocabulary, then into the cells that only kept exercises use. */
  readonly cells: ArrayLike<number>;
  readonly points: number;
  /** Number of the exercise that it was before, or null for a new bar. */
  readonly keptFrom: number | null;
  /** Each move once, as the index `from · cells + to`. */
  readonly moves: readonly number[];
  /** How many beats are rests. */
  readonly rests: number;
  readonly strokes: number;
  /** The cells in order, as text to compare. */
  readonly key: string;
}

/** What is known of the cells that bars are made of. */
export interface Alphabet {
  /** Vocabulary first, then cells that only kept exercises use. */
  readonly cells: readonly Cell[];
  /** How many of them are the vocabulary. */
  readonly vocabulary: number;
  readonly rests: readonly boolean[];
  readonly strokes: readonly number[];
}

/** An alphabet of vocabulary cells and further ones. */
export function alphabetOf(vocabulary: readonly Cell[], further: readonly Cell[]): Alphabet {
  const known = new Set(vocabulary.map((cell) => cell.text));
  const others = new Map(further.filter((cell) => !known.has(cell.text)).map((cell) => [cell.text, cell]));
  const cells = [...vocabulary, ...others.values()];
  return {
    cells,
    vocabulary: vocabulary.length,
    rests: cells.map(isRest),
    strokes: cells.map((cell) => struckSlots(cell).length),
  };
}

/** The moves of a looped bar, each once. */
export function movesOf(alphabet: Alphabet, cells: ArrayLike<number>): readonly number[] {
  const n = alphabet.vocabulary;
  const moves: number[] = [];
  for (let beat = 0; beat < cells.length; beat += 1) {
    const from = cells[beat] as number;
    const to = cells[beat + 1 === cells.length ? 0 : beat + 1] as number;
    const move = from * n + to;
    if (from < n && to < n && !moves.includes(move)) moves.push(move);
  }
  return moves;
}

/** Prepares a bar for choosing. */
export function pageBar(
  alphabet: Alphabet,
  cells: ArrayLike<number>,
  points: number,
  keptFrom: number | null = null,
): PageBar {
  let rests = 0;
  let strokes = 0;
  for (let beat = 0; beat < cells.length; beat += 1) {
    const cell = cells[beat] as number;
    if (alphabet.rests[cell]) rests += 1;
    strokes += alphabet.strokes[cell] as number;
  }
  const key = Array.from(cells).join();
  return { cells, points, keptFrom, moves: movesOf(alphabet, cells), rests, strokes, key };
}
