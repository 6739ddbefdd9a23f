/**
 * Where somebody begins who has no lesson yet.
 *
 * Conventions: a lesson starts with its first exercise; what starts easiest is graded by the composer, and of two alike
 * the slower one comes first. Swing comes first where there is some: that is what this house is for (our choice).
 */
import { gradeExercise } from '@shedbook/composer';
import { type Lesson, swingAt } from '@shedbook/core';
import type { BeginFact } from '../fact.ts';
import type { ExerciseStanding } from '../mastery/exercises.ts';
import { isStart, type Suggestion } from './next.ts';

/** Beats in a bar of swing (common practice). */
const BEATS_OF_SWING = 4;

/** Whether a lesson is swing: four beats in a bar with swung eighths, and the ride carries the time (common practice). */
function isSwing({ meter, feel, tempo, lead }: Lesson): boolean {
  const swung = swingAt(feel, tempo.startBpm);
  const isFour = meter.beats.length === BEATS_OF_SWING && !meter.compound;
  return isFour && lead === 'ride' && swung?.of === 'eighths' && swung.ratio > 1;
}

interface Start {
  readonly exercise: ExerciseStanding;
  readonly points: number;
  readonly isSwing: boolean;
}

function startOf(exercise: ExerciseStanding): Start {
  const { lesson } = exercise;
  const { points } = gradeExercise(lesson, exercise.exercise);
  return { exercise, points, isSwing: isSwing(lesson) };
}

function reasonOf(starts: number, { isSwing }: Start): BeginFact['fact'] {
  if (starts === 1) return 'begin-lesson';
  return isSwing ? 'begin-swing' : 'begin-easiest';
}

/** The first exercise of the lesson that begins easiest, swing first, or null where there is none. */
export function easiestStart(standings: readonly ExerciseStanding[]): Suggestion | null {
  const starts = standings.filter(isStart).map(startOf);
  const [first] = starts.toSorted(
    (a, b) =>
      Number(b.isSwing) - Number(a.isSwing) ||
      a.points - b.points ||
      a.exercise.lesson.tempo.startBpm - b.exercise.lesson.tempo.startBpm,
  );
  if (!first) return null;
  const { exercise } = first;
  return { exercise, why: { fact: reasonOf(starts.length, first), lesson: exercise.lesson.title } };
}
