/**
 * A brush that is drawn over the head sounds like any cymbal where it begins: a stroke of a hand that is written nowhere
 * is told as none there.
 *
 * Conventions: seconds of the take.
 */
import { VOICE_FACTS } from '@shedbook/core';
import type { PlacedBar } from '../align/bars.ts';
import type { FormGrid } from '../align/form-grid.ts';
import { secondsAt } from './places.ts';
import type { HeardDecision } from './strokes.ts';

/** So near to where a brush begins. */
const NEAR_SECONDS = 0.08;

/** The decision without strokes too many where a brush begins to be drawn. */
export function withoutDrawn(
  decision: HeardDecision,
  grid: FormGrid,
  bars: readonly PlacedBar[],
): HeardDecision {
  const drawn = bars.flatMap((bar) =>
    (bar.formBar === null ? [] : (grid.bars[bar.formBar]?.drawn ?? [])).map((at) => secondsAt(bar, at)),
  );
  if (drawn.length === 0) return decision;
  const isDrawn = (seconds: number) => drawn.some((at) => Math.abs(at - seconds) < NEAR_SECONDS);
  const strokes = decision.strokes.filter(
    ({ place, voice, timeSeconds }) =>
      place !== null || VOICE_FACTS[voice].limb.endsWith('foot') || !isDrawn(timeSeconds),
  );
  return { ...decision, strokes };
}
