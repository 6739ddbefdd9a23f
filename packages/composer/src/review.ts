/**
 * A review page: exercises of earlier sheets, mixed, so that no two neighbours come from the same sheet where that
 * can be had, and difficulty still rises.
 *
 * Conventions: exercises are graded over the groove of the lesson that reviews.
 * Source: common practice; interleaved practice as in Carter & Grahn 2016, Front. Psychol. 7:1251.
 */
import { type Exercise, exerciseLabel, formatPattern, type Lesson, seededRandom } from '@shedbook/core';
import { gradeExercise } from './grade.ts';

/** Number of exercises of a review that nobody has asked for more or fewer of. */
export const REVIEW_COUNT = 16;

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

/** An exercise at one of its places. */
interface Choice {
  readonly known: Known;
  readonly sheet: number;
  readonly from: number;
}

/** What may stand at each place of the review: even windows over the exercises, from easy to hard. */
function choicesOf(all: readonly Known[], count: number): readonly (readonly Choice[])[] {
  return Array.from({ length: count }, (_, place) => {
    const from = Math.floor((place * all.length) / count);
    const to = Math.max(from + 1, Math.floor(((place + 1) * all.length) / count));
    return all.slice(from, to).flatMap((known) => known.places.map((at) => ({ known, ...at })));
  });
}

/** By place and sheet: how many neighbours from one sheet there are from there on at least, if that sheet stands there. */
function fewestMeetings(choices: readonly (readonly Choice[])[]): readonly ReadonlyMap<number, number>[] {
  const fewest: Map<number, number>[] = [];
  let after: ReadonlyMap<number, number> = new Map();
  for (const window of choices.toReversed()) {
    const own = new Map<number, number>();
    for (const { sheet } of window) own.set(sheet, meetingsAfter(sheet, after));
    fewest.unshift(own);
    after = own;
  }
  return fewest;
}

function meetingsAfter(sheet: number, after: ReadonlyMap<number, number>): number {
  if (after.size === 0) return 0;
  return Math.min(...Array.from(after, ([other, meetings]) => meetings + (other === sheet ? 1 : 0)));
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
  const choices = choicesOf(all, count);
  const fewest = fewestMeetings(choices);
  let before: number | null = null;
  return choices.map((window, place) => {
    const meetings = ({ sheet }: Choice) => (fewest[place]?.get(sheet) ?? 0) + (sheet === before ? 1 : 0);
    const least = Math.min(...window.map(meetings));
    const best = window.filter((choice) => meetings(choice) === least);
    const { known, sheet, from } = best[random.below(best.length)] as Choice;
    before = sheet;
    const name = `${sheets[sheet]?.title ?? ''} ${exerciseLabel(from)}`;
    return {
      sheet,
      from,
      points: known.points,
      exercise: { ...known.exercise, number: place + 1, name },
    };
  });
}
