/**
 * What is expected, bar by bar: the strokes of a form with their places as fractions of the bar.
 *
 * Conventions: positions from 0 (bar line) to 1; bars in the order of the form, count-in left out; clicks are
 * never expected.
 */
import {
  beatStarts,
  hasOnset,
  type Meter,
  type Performance,
  type Stroke,
  toNumber,
  type Voice,
} from '@shedbook/core';

/** A stroke that is written. */
export interface ExpectedStroke {
  readonly stroke: Stroke;
  readonly voice: Voice;
  /** Fraction of the bar, in the lesson's feel. */
  readonly position: number;
  /** Whether it falls on a beat, where no feel moves it. */
  readonly onBeat: boolean;
}

/** One bar of the form. */
export interface ExpectedBar {
  /** As people count, from 1. */
  readonly bar: number;
  readonly strokes: readonly ExpectedStroke[];
  /** Where a brush begins to be drawn over the head, as fractions of the bar: nothing is asked there. */
  readonly drawn: readonly number[];
  /** Where a roll or a sweep is held, as fractions of the bar, over its end too: nothing that sounds there is a stroke too many. */
  readonly held: readonly HeldSpan[];
}

/** From where something is held to where it ends, as fractions of the bar. */
export interface HeldSpan {
  /** Its beginning, as a fraction of the bar. */
  readonly from: number;
  /** Its end, as a fraction of the bar. */
  readonly to: number;
}

/** A form ready to be looked for in a take. */
export interface FormGrid {
  readonly bars: readonly ExpectedBar[];
  /** Where the beats lie, as fractions of the bar. */
  readonly beats: readonly number[];
  /** Length of a bar in quarter notes. */
  readonly quarters: number;
  /** Seconds of a bar at the performance's tempo. */
  readonly barSeconds: number;
  readonly voices: readonly Voice[];
}

/** How near a beat a stroke must be to count as on it, as a fraction of the bar. */
const ON_BEAT = 1e-6;

/** The grid of a performance at one steady tempo. */
export function formGrid(performance: Performance, meter: Meter): FormGrid {
  const length = toNumber(meter.bar);
  const beats = beatStarts(meter).map((start) => toNumber(start) / length);
  const played = performance.bars.filter((bar) => bar.bar >= 1);
  const bars = played.map(({ bar, startSeconds, durationSeconds }) => {
    const written = performance.strokes.filter(({ written: place }) => place.bar === bar);
    const positionOf = ({ timeSeconds }: Stroke) => (timeSeconds - startSeconds) / durationSeconds;
    return {
      bar,
      strokes: written.filter(hasOnset).flatMap((stroke): ExpectedStroke[] => {
        if (stroke.voice === 'click') return [];
        const position = positionOf(stroke);
        const onBeat = beats.some((beat) => Math.abs(beat - position) < ON_BEAT);
        return [{ stroke, voice: stroke.voice, position, onBeat }];
      }),
      drawn: written.filter((stroke) => !hasOnset(stroke)).map(positionOf),
      held: written.flatMap((stroke): HeldSpan[] => {
        if (stroke.heldSeconds === undefined) return [];
        const from = positionOf(stroke);
        return [{ from, to: from + stroke.heldSeconds / durationSeconds }];
      }),
    };
  });
  const voices = new Set(bars.flatMap((bar) => bar.strokes.map((stroke) => stroke.voice)));
  return {
    bars,
    beats,
    quarters: length * 4,
    barSeconds: played[0]?.durationSeconds ?? 1,
    voices: [...voices],
  };
}
