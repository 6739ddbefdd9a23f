/**
 * A brush that is drawn over the head sounds like any cymbal where it begins, and one that taps it like a hi-hat foot, too: a
 * stroke that is written nowhere is told as none there; of a foot only where a tap is written. So are the bounces of a roll
 * that is held, which are no strokes of their own; how long it was held nobody is asked, since a ringing drum does not tell.
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

/** From where to where something that is no stroke sounds, in seconds of the take. */
interface Sounding {
  readonly from: number;
  readonly to: number;
}

/** Something of the bars that are played, in seconds of the take. */
function soundingIn(
  grid: FormGrid,
  bars: readonly PlacedBar[],
  of: (bar: ExpectedBar) => readonly Sounding[],
): readonly Sounding[] {
  return bars.flatMap((bar) =>
    bar.formBar === null
      ? []
      : of(grid.bars[bar.formBar]!).map(({ from, to }) => ({
          from: secondsAt(bar, from) - NEAR_SECONDS,
          to: secondsAt(bar, to) + NEAR_SECONDS,
        })),
  );
}

const at = (position: number): Sounding => ({ from: position, to: position });

/** The decision without strokes too many where a brush taps or begins to be drawn, and while something is held. */
export function withoutDrawn<D extends Decision>(decision: D, grid: FormGrid, bars: readonly PlacedBar[]): D {
  const drawn = soundingIn(grid, bars, (bar) => [...bar.drawn.map(at), ...(bar.held ?? [])]);
  const tapped = soundingIn(grid, bars, ({ strokes }) =>
    strokes.filter(isTap).map(({ position }) => at(position)),
  );
  if (drawn.length + tapped.length === 0) return decision;
  const isAmong = (some: readonly Sounding[], seconds: number) =>
    some.some(({ from, to }) => seconds > from && seconds < to);
  const isSwish = (voice: Voice, seconds: number) =>
    kindOf(voice) !== LOW &&
    (isAmong(tapped, seconds) || (!VOICE_FACTS[voice].limb.endsWith('foot') && isAmong(drawn, seconds)));
  const strokes = decision.strokes.filter(
    ({ place, voice, timeSeconds }) => place !== null || !isSwish(voice, timeSeconds),
  );
  return { ...decision, strokes };
}
