/** Which exercise of a lesson a take is of, where nobody says. */
import { type FullReport, type Lesson, sectionOf } from '@shedbook/core';
import type { ExerciseFact } from './verdict/fact.ts';

/** A take as it was heard, with whatever the ear says where there is no report. */
interface Heard {
  readonly report: FullReport | null;
}

/** A take as it is heard as an exercise. */
export interface AsExercise<As extends Heard> {
  /** Number of the exercise, from 1; null for the groove alone. */
  readonly exercise: number | null;
  readonly heard: As;
  /** What can be said of it: played, where nothing else is as likely and next to nothing speaks against it. */
  readonly told: ExerciseFact;
}

/** An exercise of which less of its own strokes is there, as a share, was not played. */
const LEAST_AGREEMENT = 0.5;

/**
 * How sure the ear is of the whole take, 0 to 1, where it is of the lesson at all, and where an exercise may be called the
 * one that was played. Of nine takes heard as exercises of eight other grooves 0.84 was the most, of their own all had 1.
 */
const CONFIDENCE = { least: 0.5, sure: 0.9 } as const;

/** So often the ear is followed from one exercise to the likelier one. */
const MOST_STEPS = 3;

/** Strokes that are there, less those that are not and those that are nobody's. */
function explained({ voices }: FullReport): number {
  return Object.values(voices).reduce((sum, { hits, missed, extra }) => sum + hits - missed - extra, 0);
}

/** How much of a take an exercise explains, in strokes; none where it was not played. */
function weightOf({ report }: Heard): number {
  const told = report?.exercise;
  const isPlayed = told && told.rather === undefined && told.agreement >= LEAST_AGREEMENT;
  return isPlayed && report.alignment.confidence >= CONFIDENCE.least
    ? explained(report)
    : Number.NEGATIVE_INFINITY;
}

/** The likeliest exercise of a section, from one of them on. */
function likeliestFrom<As extends Heard>(first: number, hearAs: (exercise: number) => As) {
  let [exercise, heard] = [first, hearAs(first)];
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const next = heard.report?.exercise?.likeliest;
    if (next === undefined) break;
    [exercise, heard] = [next, hearAs(next)];
  }
  return { exercise, heard, weight: weightOf(heard) };
}

/** Numbers of exercises of which the ear, asked for one, weighs the others: the first of each section. */
function firsts(lesson: Lesson, exercises: Lesson['exercises']): readonly number[] {
  const bySection = new Map(
    exercises.toReversed().map(({ number }) => [sectionOf(lesson, number), number] as const),
  );
  return [...bySection.values()].toReversed();
}

function factOf(exercise: number, { report }: Heard): ExerciseFact {
  const isAlone = report?.exercise?.cannotTellFrom === undefined;
  const isSure = isAlone && (report?.alignment.confidence ?? 0) >= CONFIDENCE.sure;
  return { fact: isSure ? 'exercise-played' : 'exercise-most-like', exercise };
}

/**
 * What was played: of each section the likeliest exercise, and of those the one that explains most of the take; the groove
 * alone where no exercise is there.
 * @param exercises those that it may be
 * @param hearAs hears the same take as an exercise, or as the groove alone
 * @returns null where it is of nothing in the lesson
 */
export function whichExercise<As extends Heard>(
  lesson: Lesson,
  exercises: Lesson['exercises'],
  hearAs: (exercise: number | null) => As,
): AsExercise<As> | null {
  const all = firsts(lesson, exercises).map((first) => likeliestFrom(first, hearAs));
  const [best] = all.toSorted((a, b) => b.weight - a.weight);
  if (best && best.weight > Number.NEGATIVE_INFINITY)
    return { exercise: best.exercise, heard: best.heard, told: factOf(best.exercise, best.heard) };
  const heard = hearAs(null);
  const isTime = (heard.report?.alignment.confidence ?? 0) >= CONFIDENCE.least;
  return isTime ? { exercise: null, heard, told: { fact: 'time-played' } } : null;
}
