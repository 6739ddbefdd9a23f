/**
 * How loud an exercise is at each moment, by its printed dynamics.
 *
 * Conventions: score time in whole notes from the exercise's first bar; decibels added to the level that a stroke has
 * without dynamics. A mark gives the exercise's first voice the level of that mark; its other voices go with it. Every
 * time through begins as if nothing had been said.
 * Source: the levels of the marks are those of `kit/dynamics.ts`. A hairpin goes evenly in decibels to the next mark, or
 * where none follows by 6 dB, the step of an accent (our choice).
 */
import { ACCENT_DB, DYNAMIC_LEVEL_DB } from '../kit/dynamics.ts';
import type { Exercise, Lesson } from '../lesson/lesson.ts';
import { add, type Fraction, fraction, multiply, toNumber } from '../rhythm/fraction.ts';
import { beatStarts } from '../rhythm/meter.ts';

/** A stretch in which the loudness goes evenly from one value to another; in whole notes and dB. */
interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly fromDb: number;
  readonly toDb: number;
}

/** Score time of a place from the exercise's first bar. */
function timeOf(meter: Lesson['meter'], bar: number, inBar: Fraction): number {
  return toNumber(add(multiply(meter.bar, fraction(bar)), inBar));
}

function stretchesOf(lesson: Lesson, exercise: Exercise): readonly Stretch[] {
  const voice = exercise.parts[0]?.voice ?? lesson.comping;
  const plainDb = lesson.exerciseBalance[voice];
  const starts = beatStarts(lesson.meter);
  const stretches: Stretch[] = [];
  let nowDb = 0;
  let open: { readonly start: number; readonly isLouder: boolean } | null = null;
  const go = (end: number, markDb: number | null) => {
    const towardsDb = open === null ? nowDb : nowDb + (open.isLouder ? ACCENT_DB : -ACCENT_DB);
    const toDb = markDb ?? towardsDb;
    stretches.push({ start: open?.start ?? end, end, fromDb: open ? nowDb : toDb, toDb });
    nowDb = toDb;
    open = null;
  };
  for (const { bar, beat, mark, hairpin } of exercise.dynamics ?? []) {
    const at = timeOf(lesson.meter, bar, starts[beat] ?? fraction(0));
    go(at, mark === null ? null : DYNAMIC_LEVEL_DB[mark] - plainDb);
    if (hairpin === 'louder' || hairpin === 'softer') open = { start: at, isLouder: hairpin === 'louder' };
  }
  const bars = exercise.parts[0]?.pattern.bars.length ?? 1;
  go(timeOf(lesson.meter, bars, fraction(0)), null);
  return stretches;
}

/** What the dynamics add to the level of a stroke, in dB, by its bar (from 0) and its start in it; 0 where none are written. */
export function loudnessOf(lesson: Lesson, exercise: Exercise): (bar: number, inBar: Fraction) => number {
  if (!exercise.dynamics) return () => 0;
  const stretches = stretchesOf(lesson, exercise);
  return (bar, inBar) => {
    const at = timeOf(lesson.meter, bar, inBar);
    const last = stretches.findLast(({ start }) => start <= at);
    if (!last) return 0;
    if (at >= last.end) return last.toDb;
    return last.fromDb + ((last.toDb - last.fromDb) * (at - last.start)) / (last.end - last.start);
  };
}
