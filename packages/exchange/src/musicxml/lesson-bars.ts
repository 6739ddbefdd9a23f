/**
 * The bars of an exercise with the groove under it, spelled.
 *
 * Conventions: an exercise replaces the groove for the voices that it names; the groove repeats under it from its
 * first bar. Without an exercise the groove stands alone.
 */
import {
  type BarPart,
  barPart,
  barsOf,
  type Exercise,
  type ExercisePart,
  grooveUnder,
  type Hands,
  handsOf,
  type Lesson,
  type NotatedBar,
  notateBar,
  struckSlots,
} from '@shedbook/core';

function partOfBar({ voice, pattern }: ExercisePart, bar: number): BarPart {
  return barPart(voice, pattern, bar % pattern.bars.length);
}

function strokesBefore(part: ExercisePart, bar: number): number {
  const cells = part.pattern.bars.slice(0, bar).flat();
  return cells.reduce((sum, cell) => sum + struckSlots(cell).length, 0);
}

/** A bar of a part of the exercise, with its share of the hands. */
function handedPart(part: ExercisePart, sticking: Hands | null, bar: number): BarPart {
  const plain = partOfBar(part, bar);
  if (!sticking) return plain;
  return { ...plain, sticking: sticking.slice(strokesBefore(part, bar), strokesBefore(part, bar + 1)) };
}

/** Every bar of an exercise, or of the groove alone when there is none. */
export function lessonBars(
  lesson: Lesson,
  exercise: Exercise | null,
  withGroove: boolean,
): readonly NotatedBar[] {
  const own = exercise?.parts ?? [];
  const whole = exercise ? grooveUnder(lesson, exercise) : lesson.groove;
  const groove = withGroove ? whole : [];
  const longest = Math.max(1, ...groove.map((part) => part.pattern.bars.length));
  const bars = exercise ? barsOf(exercise) : longest;
  return Array.from({ length: bars }, (_, bar) => {
    const played = own.map((part, i) => handedPart(part, exercise && handsOf(exercise, i), bar));
    return notateBar([...groove.map((part) => partOfBar(part, bar)), ...played], lesson.meter);
  });
}
