/**
 * Where the ball comes down: on every beat, and on every stroke of the pattern between beats.
 *
 * Conventions: places in whole notes, as performed; a landing's `phase` is written, so that the ball comes down on
 * the notehead at the moment that it sounds. Beats and bars of the pattern count from 0.
 */
import type { Program } from './program.ts';

/** A place where the ball comes down. */
export interface Landing {
  readonly place: number;
  /** Bar of the form, from 1; 0 and below in the count-in. */
  readonly bar: number;
  readonly patternBar: number | null;
  readonly beat: number;
  /** Written place in the beat, 0 to below 1. */
  readonly phase: number;
}

/** Every landing of a program, in order; the count-in has its own. */
export function landingsOf(program: Program): readonly Landing[] {
  const patternBars = new Map<number, number>();
  for (const { bar, patternBar } of program.bars) {
    if (patternBar !== null) patternBars.set(bar, patternBar);
  }
  const countIn = program.strokes
    .filter((each) => each.role === 'count-in')
    .map(({ place, written: { bar, beat } }) => ({ place, bar, beat }));
  const onBeats = [...countIn, ...program.beats].map(
    ({ place, bar, beat }): Landing => ({
      place,
      bar,
      patternBar: patternBars.get(bar) ?? null,
      beat: beat - 1,
      phase: 0,
    }),
  );
  const between = program.strokes
    .filter((stroke) => stroke.role === 'pattern' && stroke.written.slot > 1 && stroke.patternBar !== null)
    .map(({ place, written, slots, patternBar }): Landing => {
      const phase = (written.slot - 1) / slots;
      return { place, bar: written.bar, patternBar, beat: written.beat - 1, phase };
    });
  return [...onBeats, ...between].sort((a, b) => a.place - b.place);
}

/** A moment of the ball's way: the landing it left, the one it goes to, and how far it is, 0 to 1. */
export interface Flight {
  readonly from: Landing;
  readonly to: Landing | null;
  readonly share: number;
}

/** Where the ball is at a place; past the last landing it flies on to the end. */
export function flightAt(landings: readonly Landing[], place: number, end: number): Flight | null {
  const index = landings.findLastIndex((landing) => landing.place <= place + 1e-9);
  const from = landings[index];
  if (!from) return null;
  const to = landings[index + 1] ?? null;
  const until = to?.place ?? end;
  const share = until > from.place ? (place - from.place) / (until - from.place) : 0;
  return { from, to, share: Math.min(1, Math.max(0, share)) };
}

/** How high the ball flies over a quarter note, and at most, in any unit of length. */
export interface FlightHeights {
  /** Height over a quarter note, a number in any unit of length. */
  readonly quarter: number;
  /** Greatest height, a number in the same unit. */
  readonly most: number;
}

/** A quarter note in whole notes; the last flight, which has nowhere to go, is as long. */
const QUARTER = 0.25;

/**
 * How high the ball is over where it comes down, in the unit of the heights.
 * @source the throw of a ball: a parabola, `4 · share · (1 − share)` of its top; the top grows with the square root of
 * the note's length, a compromise between level flights and true ones, whose tops grow with its square
 */
export function flightHeight({ from, to, share }: Flight, { quarter, most }: FlightHeights): number {
  const length = Math.max(0, (to?.place ?? from.place + QUARTER) - from.place);
  return 4 * share * (1 - share) * Math.min(most, quarter * Math.sqrt(length / QUARTER));
}
