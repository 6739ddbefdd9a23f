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
import { type Place, secondsAt } from './places.ts';
import type { Decision, HeardDecision } from './strokes.ts';

/** So near to where a brush begins. */
const NEAR_SECONDS = 0.08;
/** A bass drum sounds like no brush. */
const LOW = kindOf('bass');

/** Whether a hand plays a voice: only a hand draws, and holds. */
export function isByHand(voice: Voice): boolean {
  return !VOICE_FACTS[voice].limb.endsWith('foot');
}

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
  const drawn = soundingIn(grid, bars, (bar) => [...bar.drawn.map(at), ...bar.held]);
  const tapped = soundingIn(grid, bars, ({ strokes }) =>
    strokes.filter(isTap).map(({ position }) => at(position)),
  );
  if (drawn.length + tapped.length === 0) return decision;
  const isAmong = (some: readonly Sounding[], seconds: number) =>
    some.some(({ from, to }) => seconds > from && seconds < to);
  const isSwish = (voice: Voice, seconds: number) =>
    kindOf(voice) !== LOW && (isAmong(tapped, seconds) || (isByHand(voice) && isAmong(drawn, seconds)));
  const strokes = decision.strokes.filter(
    ({ place, voice, timeSeconds }) => place !== null || !isSwish(voice, timeSeconds),
  );
  return { ...decision, strokes };
}

/** Places while something is held: those at which nothing is heard are under it. */
export function splitHeld(
  places: readonly Place[],
  events: readonly { readonly timeSeconds: number }[],
  grid: FormGrid,
  bars: readonly PlacedBar[],
): { readonly open: readonly Place[]; readonly under: readonly Place[] } {
  const held = soundingIn(grid, bars, (bar) => bar.held);
  if (held.length === 0) return { open: places, under: [] };
  const isUnder = ({ likelySeconds }: Place) =>
    held.some(
      ({ from, to }) => likelySeconds > from + 2 * NEAR_SECONDS && likelySeconds < to - NEAR_SECONDS,
    ) && events.every(({ timeSeconds }) => Math.abs(timeSeconds - likelySeconds) > NEAR_SECONDS);
  return {
    open: places.filter((place) => !isUnder(place)),
    under: places.filter(isUnder),
  };
}

/**
 * The decision with what is missed while something is held as covered by it: nobody hears whether it was played. Nor does
 * anybody where a limb is heard nowhere, and no fewer of its strokes lie under what is held than elsewhere.
 */
export function coveredByHeld(
  decision: HeardDecision,
  under: readonly Place[],
  grid: FormGrid,
  bars: readonly PlacedBar[],
): HeardDecision {
  const held = soundingIn(grid, bars, (bar) => bar.held);
  if (held.length === 0) return decision;
  const count = (places: readonly Place[], of: Voice) =>
    places.reduce((sum, { expected }) => sum + (expected.voice === of ? 1 : 0), 0);
  const isHeard = new Set(decision.strokes.flatMap(({ place, voice }) => (place ? [voice] : [])));
  const isUnder = ({ likelySeconds, expected: { voice } }: Place) =>
    held.some(({ from, to }) => likelySeconds > from && likelySeconds < to) ||
    (!isHeard.has(voice) && count(under, voice) >= Math.max(1, count(decision.missed, voice)));
  const covered = [...under, ...decision.missed.filter(isUnder)];
  if (covered.length === 0) return decision;
  const missed = decision.missed.filter((place) => !isUnder(place));
  return { ...decision, missed, covered: [...(decision.covered ?? []), ...covered] };
}
