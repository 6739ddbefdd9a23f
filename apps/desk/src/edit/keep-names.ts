/**
 * Lasting names of exercises that are written anew as text: one that something refers to keeps its name, as it does
 * where it is changed on the page, and no other gets one.
 */
import { type Exercise, exerciseKey, type Lesson, parseLesson, sectionsOf } from '@shedbook/core';
import { type InUse, withExercises } from './exercises.ts';

/** How many names two lists have in common from their beginning. */
function alikeFrom(a: readonly string[], b: readonly string[]): number {
  const most = Math.min(a.length, b.length);
  const other = Array.from({ length: most }).findIndex((_, i) => a[i] !== b[i]);
  return other < 0 ? most : other;
}

/**
 * What exercises were called before they were written anew: those between what stayed before and behind them, in order.
 * Where more or fewer stand there now, nobody can tell which is which.
 */
function formerNames(before: readonly string[], after: readonly string[]): ReadonlyMap<number, string> {
  if (before.length !== after.length) return new Map();
  const first = alikeFrom(before, after);
  const stay = alikeFrom(before.toReversed(), after.toReversed());
  const between = before.slice(first, Math.max(first, before.length - stay));
  return new Map(between.map((name, i) => [first + i, name]));
}

/** The text with the names of exercises that were written anew in it. @param before the lesson as it was */
export function withNamesKept(text: string, before: Lesson, { exercises: inUse }: InUse): string {
  const { lesson } = parseLesson(text, 'lesson');
  if (!lesson) return text;
  const names = lesson.exercises.map(exerciseKey);
  const former = formerNames(before.exercises.map(exerciseKey), names);
  const nameOf = (exercise: Exercise, at: number): Exercise => {
    const name = former.get(at);
    const isLost = name !== undefined && inUse.includes(name) && !names.includes(name);
    return isLost && exercise.id === undefined ? { ...exercise, id: name } : exercise;
  };
  const named = lesson.exercises.map(nameOf);
  return sectionsOf(lesson).reduceRight((written, section, index) => {
    const own = section.exercises.map((each) => named[lesson.exercises.indexOf(each)] ?? each);
    return own.some((each, i) => each !== section.exercises[i])
      ? withExercises(written, section, own, index)
      : written;
  }, text);
}
