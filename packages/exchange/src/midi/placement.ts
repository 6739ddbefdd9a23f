/**
 * Where the bars and strokes of performances lie in ticks.
 *
 * Conventions: every bar has its own tempo, so its bar lines are exact in ticks and in seconds; inside a bar a
 * stroke goes to the tick nearest to its performed time, or to its exact written place.
 */
import { beatLength, type Meter, type Performance, type Stroke, Ticks, toNumber } from '@shedbook/core';

/**
 * Ticks per quarter: 2^5 · 3 · 5 · 7, so that every slot that can be written is a whole tick, up to five, seven or
 * eight of them in the shortest beats.
 * @source RP-001 (SMF 1.0): the division has fifteen bits
 */
export const TICKS_PER_QUARTER = 3360;

/** `performed`: as it sounds, feel and all; `written`: every stroke on its written place. */
export type MidiTiming = 'performed' | 'written';

/** Ticks of a length in whole notes. */
export function wholeNotesToTicks(wholes: number): Ticks {
  return Ticks(wholes * 4 * TICKS_PER_QUARTER);
}

/** A bar: its first tick, and its seconds in its own performance. */
export interface BarPlacement {
  readonly startTicks: Ticks;
  readonly startSeconds: number;
  readonly durationSeconds: number;
  readonly play: Performance['bars'][number]['play'];
}

/** A performance laid out in ticks. */
export interface Placement {
  readonly barTicks: Ticks;
  readonly bars: readonly BarPlacement[];
  readonly endTicks: Ticks;
  /** Ticks of a stroke, `seconds` later (or, negative, earlier). */
  strokeTicks(stroke: Stroke, seconds?: number): Ticks;
  /** Seconds that the written slot of a stroke lasts. */
  slotSeconds(stroke: Stroke): number;
}

function findBar(bars: readonly BarPlacement[], seconds: number): BarPlacement {
  let low = 0;
  let high = bars.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((bars[middle] as BarPlacement).startSeconds <= seconds) low = middle;
    else high = middle - 1;
  }
  return bars[low] as BarPlacement;
}

/**
 * Lays a performance out from `startTicks` on.
 * @throws RangeError when there are strokes but no bars.
 */
export function placePerformance(
  performance: Performance,
  meter: Meter,
  timing: MidiTiming,
  startTicks: Ticks,
): Placement {
  const barTicks = wholeNotesToTicks(toNumber(meter.bar));
  const bars = performance.bars.map((bar, i) => ({ ...bar, startTicks: Ticks(startTicks + i * barTicks) }));
  if (bars.length === 0 && performance.strokes.length > 0) {
    throw new RangeError('Internal error: strokes without bars');
  }
  const countIn = bars.filter((bar) => bar.play === 'count-in').length;
  const originTicks = startTicks + countIn * barTicks;
  const secondsToTicks = (seconds: number) => {
    const bar = findBar(bars, seconds);
    return bar.startTicks + ((seconds - bar.startSeconds) / bar.durationSeconds) * barTicks;
  };
  return {
    barTicks,
    bars,
    endTicks: Ticks(startTicks + bars.length * barTicks),
    strokeTicks: (stroke, seconds = 0) => {
      const performed = secondsToTicks(stroke.timeSeconds + seconds);
      if (timing === 'performed') return Ticks(Math.round(performed));
      const written = originTicks + (4 * TICKS_PER_QUARTER * stroke.at.num) / stroke.at.den;
      return Ticks(Math.round(written + performed - secondsToTicks(stroke.timeSeconds)));
    },
    slotSeconds: (stroke) => {
      const beat = toNumber(beatLength(meter, stroke.written.beat - 1));
      const bar = findBar(bars, stroke.timeSeconds);
      return (bar.durationSeconds * beat) / toNumber(meter.bar) / stroke.slots;
    },
  };
}
