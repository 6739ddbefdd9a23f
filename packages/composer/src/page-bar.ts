/**
 * A bar on its way to a page, with what choosing looks at: its points and its moves.
 *
 * Conventions: cells as indices into the vocabulary, followed by cells that only kept exercises use; a move is
 * `from · cells + to` and is noted only between cells of the vocabulary.
 */
import type { Cell } from '@shedbook/core';

/** Points that differ by less are the same: sums of floats. */
export const SAME_POINTS = 1e-9;

/** A bar that is, or may be, on the page. */
export interface PageBar {
  /** Cells as indices into the vocabulary, then into the cells that only kept exercises use. */
  readonly cells: Uint16Array;
  readonly points: number;
  /** Number of the exercise that it was before, or null for a new bar. */
  readonly keptFrom: number | null;
  /** Each move once, as the index `from · cells + to`. */
  readonly moves: readonly number[];
  /** Its cells as the digits of one number, the first beat's the lowest. */
  readonly key: number;
}

/** What is known of the cells that bars are made of. */
export interface Alphabet {
  /** Vocabulary first, then cells that only kept exercises use. */
  readonly cells: readonly Cell[];
  /** How many of them are the vocabulary. */
  readonly vocabulary: number;
}

/** An alphabet of vocabulary cells and further ones. */
export function alphabetOf(vocabulary: readonly Cell[], further: readonly Cell[]): Alphabet {
  const known = new Set(vocabulary.map((cell) => cell.text));
  const others = new Map(further.filter((cell) => !known.has(cell.text)).map((cell) => [cell.text, cell]));
  return { cells: [...vocabulary, ...others.values()], vocabulary: vocabulary.length };
}

/** The moves of a looped bar, each once. */
export function movesOf({ vocabulary: n }: Alphabet, cells: ArrayLike<number>): readonly number[] {
  const moves: number[] = [];
  for (let beat = 0; beat < cells.length; beat += 1) {
    const from = cells[beat] as number;
    const to = cells[beat + 1 === cells.length ? 0 : beat + 1] as number;
    const move = from * n + to;
    if (from < n && to < n && !moves.includes(move)) moves.push(move);
  }
  return moves;
}

/** Cells as the digits of one number, the first beat's the lowest. @param kinds how many cells there are */
export function keyOf(cells: ArrayLike<number>, kinds: number): number {
  let key = 0;
  for (let beat = cells.length - 1; beat >= 0; beat -= 1) key = key * kinds + (cells[beat] as number);
  return key;
}

/** Prepares a bar for choosing. */
export function pageBar(
  alphabet: Alphabet,
  cells: Uint16Array,
  points: number,
  keptFrom: number | null = null,
): PageBar {
  const key = keyOf(cells, alphabet.cells.length);
  return { cells, points, keptFrom, moves: movesOf(alphabet, cells), key };
}
