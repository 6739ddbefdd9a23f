/**
 * A review page: exercises of earlier sheets, mixed, so that no two neighbours come from the same sheet where that
 * can be had, and difficulty still rises.
 *
 * Conventions: exercises are graded over the groove of the lesson that reviews.
 * Source: common practice; interleaved practice as in Carter & Grahn 2016, Front. Psychol. 7:1251.
 */
import { type Exercise, formatPattern, type Lesson, type Random, seededRandom } from '@shedbook/core';
import { gradeExercise } from './grade.ts';

/** What to review. */
export interface ReviewOptions {
  readonly count: number;
  readonly seed: number | string;
}

/** An exercise taken from an earlier sheet. */
export interface ReviewedExercise {
  readonly exercise: Exercise;
  /** Number of its sheet among those given, from 0. */
  readonly sheet: number;
  /** Its number on that sheet. */
  readonly from: number;
  /** Over the groove of the lesson that reviews. */
  readonly points: number;
}

function textOf(exercise: Exercise): string {
  return exercise.parts.map((part) => `${part.voice} ${formatPattern(part.pattern)}`).join(' / ');
}

/** Exercises of all sheets that fit the lesson's meter, each text once, in ascending order of difficulty. */
function gather(lesson: Lesson, sheets: readonly Lesson[]): readonly ReviewedExercise[] {
  const seen = new Set<string>();
  const found = sheets.flatMap((sheet, index) =>
    sheet.meter.text !== lesson.meter.text
      ? []
      : sheet.exercises.flatMap((exercise) => {
          if (seen.has(textOf(exercise))) return [];
          seen.add(textOf(exercise));
          const points = gradeExercise(lesson, exercise).points;
          return [{ exercise, sheet: index, from: exercise.number, points }];
        }),
  );
  return found.sort((a, b) => a.points - b.points);
}

/** One of the exercises in a window, from another sheet than the one before where there is one. */
function pick(window: readonly ReviewedExercise[], before: number | null, random: Random): ReviewedExercise {
  const others = window.filter((each) => each.sheet !== before);
  const choice = others.length > 0 ? others : window;
  return choice[random.below(choice.length)] as ReviewedExercise;
}

/** Exercises of earlier sheets for a review, numbered from 1 and named after their sheets. */
export function composeReview(
  lesson: Lesson,
  sheets: readonly Lesson[],
  options: ReviewOptions,
): readonly ReviewedExercise[] {
  const random = seededRandom(options.seed);
  const all = gather(lesson, sheets);
  const count = Math.min(options.count, all.length);
  let before: number | null = null;
  return Array.from({ length: count }, (_, place) => {
    const from = Math.floor((place * all.length) / count);
    const to = Math.max(from + 1, Math.floor(((place + 1) * all.length) / count));
    const picked = pick(all.slice(from, to), before, random);
    before = picked.sheet;
    const name = `${sheets[picked.sheet]?.title ?? ''} ${picked.from}`;
    return { ...picked, exercise: { ...picked.exercise, number: place + 1, name } };
  });
}
