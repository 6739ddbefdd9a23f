/**
 * A stretch of a take, as if nothing else had been played: for the report of one loop out of many.
 *
 * Conventions: bars of the take by index, the end not included; places count from the stretch's first bar.
 */
import type { PlacedBar } from '../align/bars.ts';
import type { Place } from '../decide/places.ts';
import type { Decision } from '../decide/strokes.ts';

/** Bars of a take, from 0; `toBar` is the first that is left out. */
export interface Stretch {
  readonly fromBar: number;
  readonly toBar: number;
}

/** A stroke this much before a bar line is rather an early one of the bar that begins there: a share of a bar. */
const EARLY = 0.02;

/** What was decided inside a stretch. A stroke that is not written belongs to the bar that it lies in. */
export function cutStretch<D extends Decision>(
  decision: D,
  bars: readonly PlacedBar[],
  { fromBar, toBar }: Stretch,
): D {
  const first = bars[fromBar]!;
  const last = bars[toBar - 1]!;
  const isIn = (place: Place) => place.takeBar >= fromBar && place.takeBar < toBar;
  const moved = (place: Place): Place => ({ ...place, takeBar: place.takeBar - fromBar });
  const from = first.startSeconds - EARLY * first.barSeconds;
  const to = last.startSeconds + (1 - EARLY) * last.barSeconds;
  return {
    ...decision,
    strokes: decision.strokes
      .filter(({ place, timeSeconds }) => (place ? isIn(place) : timeSeconds >= from && timeSeconds < to))
      .map((stroke) => (stroke.place ? { ...stroke, place: moved(stroke.place) } : stroke)),
    missed: decision.missed.filter(isIn).map(moved),
    ...(decision.covered ? { covered: decision.covered.filter(isIn).map(moved) } : {}),
  };
}
