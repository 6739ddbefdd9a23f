/**
 * Playing on one surface, a pad or a table: the exercise's rhythm alone is asked for, on one voice; the page plays the
 * rest of the groove.
 *
 * Conventions: several parts of an exercise become one; where both strike, one stroke is asked for.
 */
import { type Cell, cell, type Exercise, type Lesson, type Limb, type Voice } from '@shedbook/core';

/** What can be played on. */
export const SURFACES = ['kit', 'pad'] as const;

/** What is played on. */
export type Surface = (typeof SURFACES)[number];

/** Strokes of two voices in one beat, in the finer subdivision; the first alone where neither divides the other. */
function together(first: Cell, other: Cell): Cell {
  const [finer, coarser] = first.marks.length >= other.marks.length ? [first, other] : [other, first];
  const step = finer.marks.length / coarser.marks.length;
  if (!Number.isInteger(step)) return first;
  const marks = [...finer.text].map((mark, slot) => {
    const beside = slot % step === 0 ? (coarser.text[slot / step] ?? '.') : '.';
    return mark === '.' ? beside : mark;
  });
  return cell(marks.join(''));
}

function onOne(exercise: Exercise): Exercise {
  const [first, ...others] = exercise.parts;
  if (!first || others.length === 0) return exercise;
  const bars = first.pattern.bars.map((cells, bar) =>
    cells.map((own, beat) =>
      others.reduce((sum, { pattern }) => {
        const beside = pattern.bars[bar]?.[beat];
        return beside ? together(sum, beside) : sum;
      }, own),
    ),
  );
  return { ...exercise, sticking: null, parts: [{ voice: first.voice, pattern: { bars } }] };
}

/** The voice that every stroke on the pad is; null where there is no exercise. */
export function padVoice(lesson: Lesson, exercise: number | null): Voice | null {
  return lesson.exercises.find(({ number }) => number === exercise)?.parts[0]?.voice ?? null;
}

/** The lesson as it is asked for on a pad: each exercise on one voice, and nothing under it. */
export function ontoPad(lesson: Lesson): Lesson {
  return { ...lesson, groove: [], exercises: lesson.exercises.map(onOne) };
}

/** The limbs that the page leaves to somebody on a pad: those of the exercise. */
export function padLimbs(lesson: Lesson, exercise: number | null): readonly Limb[] {
  const parts = lesson.exercises.find(({ number }) => number === exercise)?.parts ?? [];
  return [...new Set(parts.map(({ voice }) => lesson.limbs[voice]))];
}
