/**
 * Which figures of the trade a page is to quote.
 *
 * Conventions: an idiom of 0 quotes none, of 1 as many as there are; the commonest first.
 */
import { type Lesson, parsePattern } from '@shedbook/core';
import { FIGURES, type Figure } from './figures.data.ts';

/** A figure by the cells of a vocabulary. */
export interface VocabularyFigure {
  readonly figure: Figure;
  /** Indices into the vocabulary, one a beat. */
  readonly cells: Uint16Array;
}

/** The figure that a bar's text is, or null. */
export function figureOf(text: string): Figure | null {
  return FIGURES.find((figure) => figure.text === text) ?? null;
}

/** The figures that a vocabulary can write in the lesson's meter, in the order in which they are taught. */
export function figuresIn(lesson: Lesson, texts: readonly string[]): readonly VocabularyFigure[] {
  return FIGURES.flatMap((figure) => {
    const cells = parsePattern(figure.text).bars.flat();
    const indices = cells.map((cell) => texts.indexOf(cell.text));
    const fits = cells.length === lesson.meter.beats.length && indices.every((index) => index >= 0);
    return fits ? [{ figure, cells: Uint16Array.from(indices) }] : [];
  });
}

/** How many figures a page of `lines` lines is to quote at most: none at an idiom of 0, half of its lines at 0.5. */
export function figuresWanted(idiom: number, lines: number): number {
  return Math.floor(idiom * lines);
}
