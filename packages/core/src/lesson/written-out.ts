/** An exercise with nothing to be repeated: every bar as often as it is played, with all that is said of it. */
import { handedBars, handedParts, withoutSlots } from './handed.ts';
import type { Exercise } from './lesson.ts';
import { playedBars } from './repeats.ts';
import { saidAt } from './said-at.ts';

/**
 * The exercise with its bars in another order, or more than once, and all that is said of them; without repeats.
 * @param order numbers of its bars, from 0
 */
export function inBarOrder<E extends Omit<Exercise, 'number'>>(exercise: E, order: readonly number[]): E {
  const placesOf = (bar: number) => order.flatMap((each, place) => (each === bar ? [place] : []));
  const parts = handedParts(exercise).map((part) => handedBars(part, order));
  return { ...saidAt(exercise, placesOf), ...withoutSlots(parts) } as E;
}

/** The exercise with its repeats written out. */
export function writtenOut<E extends Omit<Exercise, 'number'>>(exercise: E): E {
  if (!exercise.repeats && !exercise.barRepeats) return exercise;
  return inBarOrder(exercise, playedBars(exercise.parts[0]?.pattern.bars.length ?? 0, exercise));
}
