/**
 * Tempi as they are printed: which note is counted, and the steps from start to goal.
 *
 * Conventions: a lesson's tempi are quarter notes a minute. In a compound meter the dotted quarter is counted
 * where that gives whole numbers.
 */
import type { Lesson } from '@shedbook/core';

/** Tempi in beats of one note value. */
export interface PrintedTempi {
  readonly note: 'quarter' | 'dotted quarter';
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
  const dotted = [tempo.startBpm, tempo.goalBpm, tempo.stepBpm].map((bpm) => (bpm * 2) / 3);
  const inDotted = meter.compound && meter.lower === 8 && dotted.every((bpm) => Number.isInteger(bpm));
  const [start, goal, step] = (inDotted ? dotted : [tempo.startBpm, tempo.goalBpm, tempo.stepBpm]) as [
    number,
    number,
    number,
  ];
  return {
    note: inDotted ? 'dotted quarter' : 'quarter',
    start,
    goal,
    steps: stepsBetween(start, goal, step),
  };
}

/** At most `most` of the steps, evenly chosen; the first and the last stay. */
export function thinned<T>(steps: readonly T[], most: number): readonly T[] {
  if (steps.length <= most) return steps;
  if (most < 2) return most === 1 ? steps.slice(-1) : [];
  const every = Math.ceil((steps.length - 1) / (most - 1));
  return [...steps.slice(0, -1).filter((_, index) => index % every === 0), steps.at(-1) as T];
}
