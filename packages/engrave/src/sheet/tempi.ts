/**
 * Tempi as they are printed: which note is counted, and the steps from start to goal.
 *
 * Conventions: a lesson's tempi are quarter notes a minute; printed are whole beats of its meter, which is what a
 * metronome is set to.
 */
import { countedTempo, type Fraction, type Lesson, tempoBeat } from '@shedbook/core';

/** Tempi in beats of the meter a minute, whole numbers. */
export interface PrintedTempi {
  /** Length of the note that is counted, in whole notes. */
  readonly beat: Fraction;
  readonly start: number;
  readonly goal: number;
  /** Start to goal, both included, in steps. */
  readonly steps: readonly number[];
}

function stepsBetween(start: number, goal: number, step: number): readonly number[] {
  const count = Math.ceil((goal - start) / step);
  return [...Array.from({ length: count }, (_, index) => start + index * step), goal];
}

/** The lesson's tempi as printed. */
export function printedTempi({ tempo, meter }: Lesson): PrintedTempi {
  const { startBpm, goalBpm, stepBpm } = tempo;
  const counted = stepsBetween(startBpm, goalBpm, stepBpm).map((bpm) => countedTempo(meter, bpm));
  return {
    beat: tempoBeat(meter),
    start: countedTempo(meter, startBpm),
    goal: countedTempo(meter, goalBpm),
    steps: [...new Set(counted)],
  };
}

/** At most `most` of the steps, evenly chosen; the first and the last stay. */
export function thinned<T>(steps: readonly T[], most: number): readonly T[] {
  if (steps.length <= most) return steps;
  if (most < 2) return most === 1 ? steps.slice(-1) : [];
  const every = Math.ceil((steps.length - 1) / (most - 1));
  return [...steps.slice(0, -1).filter((_, index) => index % every === 0), steps.at(-1) as T];
}
