/**
 * From score time to seconds: a tempo map, a meter and a feel.
 *
 * Conventions: score time 0 is the first bar line after the count-in; the count-in lies before it. Tempo is in
 * quarter notes a minute, constant from each mark to the next; the first mark also holds before its place.
 */

import { add, compare, type Fraction, fraction, multiply, toNumber } from '../rhythm/fraction.ts';
import { beatLength, beatStarts, type Meter } from '../rhythm/meter.ts';
import { type Bpm, Seconds } from '../units.ts';
import type { Feel, SwingRatio } from './feel.ts';
import { isDotted, performedPhase, swingAt, wholeNotesToSeconds } from './swing.ts';

/** A tempo from a place on. */
export interface TempoMark {
  /** Score time, in whole notes. */
  readonly at: Fraction;
  readonly bpm: Bpm;
}

/** Tempo marks in ascending order; at least one. */
export type TempoMap = readonly TempoMark[];

/** A written slot; bar, beat and slot count from 0, count-in bars are negative. */
export interface SlotPlace {
  readonly bar: number;
  readonly beat: number;
  readonly slot: number;
  readonly slots: number;
}

/** Places of slots and bar lines in seconds. */
export interface Timeline {
  /** Score time of a slot, in whole notes, before any feel. */
  scoreTime(place: SlotPlace): Fraction;
  /** Seconds from score time 0 to the performed place of a slot; negative in the count-in. */
  slotSeconds(place: SlotPlace): Seconds;
  /** Seconds from score time 0 to a bar line; bars count from 0. */
  barSeconds(bar: number): Seconds;
  /** Tempo in force at a score time, in quarter notes a minute. */
  bpmAt(at: Fraction): Bpm;
  /** Swing in force at a score time, or null for an even feel. */
  swingAt(at: Fraction): SwingRatio | null;
}

/** A tempo that does not change. */
export function constantTempo(bpm: Bpm): TempoMap {
  return [{ at: fraction(0), bpm }];
}

function requireTempoMap(map: TempoMap): void {
  const ordered = map.every((mark, i) => i === 0 || compare((map[i - 1] as TempoMark).at, mark.at) < 0);
  const positive = map.every((mark) => Number.isFinite(mark.bpm) && mark.bpm > 0);
  if (map.length === 0 || !ordered || !positive) {
    throw new RangeError('Internal error: a tempo map has marks in ascending order with positive tempi');
  }
}

/** Seconds from score time 0 to `wholes` whole notes. */
function secondsAt(map: TempoMap, wholes: number): Seconds {
  let seconds = Seconds(0);
  let at = 0;
  for (let i = 0; i < map.length; i += 1) {
    const next = map[i + 1];
    const until = next ? toNumber(next.at) : Number.POSITIVE_INFINITY;
    const bpm = (map[i] as TempoMark).bpm;
    if (wholes <= until) return Seconds(seconds + wholeNotesToSeconds(wholes - at, bpm));
    if (until > at) {
      seconds = Seconds(seconds + wholeNotesToSeconds(until - at, bpm));
      at = until;
    }
  }
  return seconds;
}

function markAt(map: TempoMap, at: Fraction): TempoMark {
  const reached = map.filter((mark) => compare(mark.at, at) <= 0);
  return (reached.at(-1) ?? map[0]) as TempoMark;
}

/**
 * A timeline for a meter, a feel and a tempo map.
 * @throws RangeError when the tempo map is empty, out of order or has a tempo that is not positive.
 */
export function createTimeline(meter: Meter, feel: Feel, map: TempoMap): Timeline {
  requireTempoMap(map);
  const starts = beatStarts(meter);
  const barStart = (bar: number) => multiply(meter.bar, fraction(bar));
  const beatStart = (place: SlotPlace) => add(barStart(place.bar), starts[place.beat] ?? fraction(0));
  const swing = (at: Fraction) => swingAt(feel, markAt(map, at).bpm);
  return {
    scoreTime: (place) =>
      add(beatStart(place), multiply(beatLength(meter, place.beat), fraction(place.slot, place.slots))),
    slotSeconds: (place) => {
      const start = beatStart(place);
      const length = beatLength(meter, place.beat);
      const phase = performedPhase(place.slot, place.slots, isDotted(length), swing(start));
      return secondsAt(map, toNumber(start) + toNumber(length) * phase);
    },
    barSeconds: (bar) => secondsAt(map, toNumber(barStart(bar))),
    bpmAt: (at) => markAt(map, at).bpm,
    swingAt: swing,
  };
}
