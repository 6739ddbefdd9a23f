/** Changing what the composer goes by. */
import type { FittedWeight } from '@shedbook/coach';
import { editLesson, type Lesson, type PhraseForm } from '@shedbook/core';

/** The text with a cell in the vocabulary, or without it; names of cells that stay are kept. */
export function toggleCell(text: string, lesson: Lesson, cell: string): string {
  const there = lesson.vocabulary.some((each) => each.cell.text === cell);
  const kept = lesson.vocabulary
    .filter((each) => each.cell.text !== cell)
    .map((each) => (each.name === null ? each.cell.text : { cell: each.cell.text, name: each.name }));
  return editLesson(text, ['vocabulary'], there ? kept : [...kept, cell]);
}

/** The text with another number of exercises asked for. */
export function setCount(text: string, count: number): string {
  return editLesson(text, ['compose', 'count'], count);
}

/** The text with another seed: another page. */
export function setSeed(text: string, seed: number): string {
  return editLesson(text, ['compose', 'seed'], seed);
}

/** The text with a limit of strokes, or of silent beats, in a bar; null for none. */
export function setMost(text: string, what: 'strokes' | 'rests', most: number | null): string {
  return editLesson(text, ['compose', 'limits', what, 'most'], most ?? undefined);
}

/** The text with another share of figures of the trade, 0 to 1. */
export function setIdiom(text: string, idiom: number): string {
  return editLesson(text, ['compose', 'idiom'], idiom);
}

/** The text with blocks named after their figures, or not. */
export function setHeadings(text: string, headings: boolean): string {
  return editLesson(text, ['compose', 'headings'], headings || undefined);
}

/** Digits of a weight, in points: a hundredth is less than anybody hears. */
const WEIGHT_DIGITS = 2;

/** The text with weights of difficulty as practice has them. */
export function setWeights(text: string, weights: readonly FittedWeight[]): string {
  return weights.reduce(
    (written, { part, fitted }) =>
      editLesson(written, ['compose', 'weights', part], Number(fitted.toFixed(WEIGHT_DIGITS))),
    text,
  );
}

/** The text with exercises that are phrases of some bars, or single bars. */
export function setPhrase(text: string, phrase: PhraseForm | null, bars: number): string {
  const named = editLesson(text, ['compose', 'phrase'], phrase ?? undefined);
  return editLesson(named, ['compose', 'bars'], bars === 1 ? undefined : bars);
}
