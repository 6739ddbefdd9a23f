/**
 * Clocks: which place of a program is heard when.
 *
 * Conventions: places in whole notes, as in a program; seconds from a moment that whoever makes the clock names.
 */
import { Seconds } from '@shedbook/core';

/** From places to seconds and back; later places are later. */
export interface Clock {
  /** The place that is heard at a moment: whole notes. */
  placeAt(seconds: number): number;
  /** When a place is heard. */
  secondsAt(place: number): Seconds;
}

/** A place and when it was heard. */
export interface Knot {
  /** Whole notes. */
  readonly place: number;
  readonly seconds: number;
}

/** A clock that goes evenly. @param start the place that is heard at 0 seconds @param bpm quarter notes a minute */
export function evenClock(start: number, bpm: number): Clock {
  return {
    placeAt: (seconds) => start + (seconds * bpm) / 240,
    secondsAt: (place) => Seconds(((place - start) * 240) / bpm),
  };
}

/** Knots closer than this cannot be told apart: whole notes and seconds. */
const SAME = 1e-6;

/** Knots in order, without those that would turn the clock back. */
function inOrder(knots: readonly Knot[]): readonly Knot[] {
  const kept: Knot[] = [];
  for (const knot of knots.toSorted((a, b) => a.place - b.place)) {
    const last = kept.at(-1);
    if (!last || (knot.place > last.place + SAME && knot.seconds > last.seconds + SAME)) kept.push(knot);
  }
  return kept;
}

/** The part of the way between two of the knots that a value lies on; before the first and after the last it goes on. */
function between(knots: readonly Knot[], value: number, from: keyof Knot, to: keyof Knot): number {
  const next = knots.findIndex((knot) => knot[from] > value);
  const at = Math.max(1, next === -1 ? knots.length - 1 : next);
  const [a, b] = [knots[at - 1] as Knot, knots[at] as Knot];
  return a[to] + ((value - a[from]) / (b[from] - a[from])) * (b[to] - a[to]);
}

/**
 * A clock that follows what somebody played: at each knot it is where they were, between knots it goes evenly.
 * @throws RangeError where fewer than two knots follow each other
 */
export function playedClock(knots: readonly Knot[]): Clock {
  const kept = inOrder(knots);
  if (kept.length < 2) throw new RangeError(`At knots: found ${kept.length} in order, expected two at least`);
  return {
    placeAt: (seconds) => between(kept, seconds, 'seconds', 'place'),
    secondsAt: (place) => Seconds(between(kept, place, 'place', 'seconds')),
  };
}

/** The same clock read on another: its seconds count from a moment of the first, and pass more slowly below a speed of 1. */
export function movedClock(
  clock: Clock,
  { fromSeconds, speed }: { readonly fromSeconds: number; readonly speed: number },
): Clock {
  return {
    placeAt: (seconds) => clock.placeAt(fromSeconds + seconds * speed),
    secondsAt: (place) => Seconds((clock.secondsAt(place) - fromSeconds) / speed),
  };
}
