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

/** An exercise and every place that it has on the sheets. */
interface Known {
  readonly exercise: Exercise;
  readonly points: number;
  readonly places: { readonly sheet: number; readonly from: number }[];
}

/** Exercises of all sheets that fit the lesson's meter, each text once, in ascending order of difficulty. */
function gather(lesson: Lesson, sheets: readonly Lesson[]): readonly Known[] {
  const known = new Map<string, Known>();
  sheets.forEach((each, sheet) => {
    if (each.meter.text !== lesson.meter.text) return;
    for (const exercise of each.exercises) {
      const text = textOf(exercise);
      const place = { sheet, from: exercise.number };
      const before = known.get(text);
      if (before) before.places.push(place);
      else known.set(text, { exercise, points: gradeExercise(lesson, exercise).points, places: [place] });
    }
  });
  return [...known.values()].sort((a, b) => a.points - b.points);
}

/** One of the exercises in a window, from another sheet than the one before where there is one. */
function pick(window: readonly Known[], before: number | null, random: Random) {
  const of = (list: readonly Known[]) =>
    list.flatMap((known) => known.places.map((place) => ({ known, ...place })));
  const all = of(window);
  const others = all.filter((each) => each.sheet !== before);
  const choice = others.length > 0 ? others : all;
  return choice[random.below(choice.length)] as (typeof all)[number];
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
    const { known, sheet, from: number } = pick(all.slice(from, to), before, random);
    before = sheet;
    const name = `${sheets[sheet]?.title ?? ''} ${number}`;
    return {
      sheet,
      from: number,
      points: known.points,
      exercise: { ...known.exercise, number: place + 1, name },
    };
  });
}
