/**
 * A brush that is drawn over the head sounds like any cymbal where it begins, and one that taps it like a hi-hat foot, too: a
 * stroke that is written nowhere is told as none there; of a foot only where a tap is written.
 *
 * Conventions: seconds of the take.
 */
import { VOICE_FACTS, type Voice } from '@shedbook/core';
import type { PlacedBar } from '../align/bars.ts';
import { isTap } from '../align/brushed.ts';
import type { ExpectedBar, FormGrid } from '../align/form-grid.ts';
import { kindOf } from '../align/observations.ts';
import { secondsAt } from './places.ts';
import type { Decision } from './strokes.ts';

/** So near to where a brush begins. */
const NEAR_SECONDS = 0.08;
/** A bass drum sounds like no brush. */
const LOW = kindOf('bass');

/** The decision without strokes too many where a brush taps or begins to be drawn. */
export function withoutDrawn<D extends Decision>(decision: D, grid: FormGrid, bars: readonly PlacedBar[]): D {
  const secondsOf = (positionsOf: (bar: ExpectedBar) => readonly number[]) =>
    bars.flatMap((bar) =>
      bar.formBar === null ? [] : positionsOf(grid.bars[bar.formBar]!).map((at) => secondsAt(bar, at)),
    );
  const drawn = secondsOf((bar) => bar.drawn);
  const tapped = secondsOf(({ strokes }) => strokes.filter(isTap).map(({ position }) => position));
  if (drawn.length + tapped.length === 0) return decision;
  const isAmong = (moments: readonly number[], seconds: number) =>
    moments.some((at) => Math.abs(at - seconds) < NEAR_SECONDS);
  const isSwish = (voice: Voice, seconds: number) =>
    kindOf(voice) !== LOW &&
    (isAmong(tapped, seconds) || (!VOICE_FACTS[voice].limb.endsWith('foot') && isAmong(drawn, seconds)));
  const strokes = decision.strokes.filter(
    ({ place, voice, timeSeconds }) => place !== null || !isSwish(voice, timeSeconds),
  );
  return { ...decision, strokes };
}
