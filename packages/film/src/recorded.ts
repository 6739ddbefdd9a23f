/**
 * Performances that were recorded, and what of them is shown.
 *
 * Conventions: seconds of the recording unless said; a speed of 0.5 is half as fast.
 */
import { type Form, type FullReport, Seconds } from '@shedbook/core';
import { dbToGain, peakOf, rootMeanSquare } from '@shedbook/signal';

/** What is heard over a performance: what was recorded, the kit at the same moments, or both. */
export const HEARD_FROM = ['teacher', 'model', 'both'] as const;

/** What is heard over a performance. */
export type HeardFrom = (typeof HEARD_FROM)[number];

/** A recording of somebody who plays an exercise, as the ear heard it. */
export interface Recorded {
  readonly exercise: number;
  /** Null for the form that plays where none is named. */
  readonly form: Form | null;
  readonly report: FullReport;
  /** What sounds: from the count-in, where there is one, until the last stroke has died away. */
  readonly sounding: { readonly fromSeconds: Seconds; readonly toSeconds: Seconds };
  /** Size of its picture as it is looked at, in pixels; null where it has none. */
  readonly picture: { readonly widthPx: number; readonly heightPx: number } | null;
}

/** Performances that a film is laid over. */
export interface OverPerformances {
  /** At most one of each exercise. */
  readonly recorded: readonly Recorded[];
  readonly heard: HeardFrom;
  /** How much louder the kit is than the recording where both are heard, in dB. */
  readonly modelDb: number;
  /** Each performance is shown at each of these ratios: 1 is as fast as it was played. */
  readonly speeds: readonly number[];
}

/** What a scene shows of a recording. */
export interface Shown {
  readonly recorded: Recorded;
  /** What of it is seen and heard. */
  readonly fromSeconds: Seconds;
  readonly toSeconds: Seconds;
  /** Ratio of what is seen to what was played. */
  readonly speed: number;
}

const WINDOW_SECONDS = 0.02;
/** What is this much softer than the loudest window is silence: room and hiss. */
const SILENCE_BEFORE_DB = -32;
const SILENCE_AFTER_DB = -44;
/** So much is kept before what sounds first and after what sounds last. */
const MARGIN_SECONDS = 0.4;
/** A performance begins and ends so long before and after its strokes at least, and at most. */
const LEAST_SECONDS = 1;
const MOST_RINGING_SECONDS = 4;
/** So many bars of count-in are kept at most. */
const MOST_COUNT_IN_BARS = 2;

/** Measures how loud a recording is from window to window, in blocks of any length. */
export class LevelMeter {
  readonly #size: number;
  readonly #window: Float32Array;
  #filled = 0;
  /** Root mean square of each whole window, as a factor of full scale. */
  readonly levels: number[] = [];

  constructor(sampleRateHz: number) {
    this.#size = Math.round(WINDOW_SECONDS * sampleRateHz);
    this.#window = new Float32Array(this.#size);
  }

  /** Takes the next block of mono samples. */
  push(block: Float32Array): void {
    for (let at = 0; at < block.length; ) {
      const part = block.subarray(at, at + this.#size - this.#filled);
      this.#window.set(part, this.#filled);
      this.#filled += part.length;
      at += part.length;
      if (this.#filled < this.#size) return;
      this.levels.push(rootMeanSquare(this.#window));
      this.#filled = 0;
    }
  }
}

/**
 * What of a recording sounds: a count-in of two bars at most before the first bar, if there is one, and what rings
 * after the last stroke. Silence before and after is left out.
 */
export function soundingOf(
  { levels }: Pick<LevelMeter, 'levels'>,
  { strokes, tempo, asked }: Pick<FullReport, 'strokes' | 'tempo' | 'asked'>,
): Recorded['sounding'] {
  const loudest = peakOf(Float32Array.from(levels));
  const end = levels.length * WINDOW_SECONDS;
  const times = strokes.map(({ timeSeconds }) => timeSeconds);
  const [first, last] = [Math.min(...times), Math.max(...times)];
  const bar = (60 * asked.quartersInBar) / (tempo[0]?.bpm ?? asked.bpm);
  const from = levels.findIndex((level, index) => {
    const seconds = index * WINDOW_SECONDS;
    const isCountIn = seconds > first - MOST_COUNT_IN_BARS * bar - MARGIN_SECONDS;
    return isCountIn && level > loudest * dbToGain(SILENCE_BEFORE_DB);
  });
  const to = levels.findLastIndex((level) => level > loudest * dbToGain(SILENCE_AFTER_DB));
  const begins = Math.min(first - LEAST_SECONDS, from * WINDOW_SECONDS - MARGIN_SECONDS);
  const rings = Math.max(last + LEAST_SECONDS, (to + 1) * WINDOW_SECONDS);
  return {
    fromSeconds: Seconds(Math.max(0, begins)),
    toSeconds: Seconds(Math.min(end, last + MOST_RINGING_SECONDS, rings)),
  };
}
