/**
 * What was due when: the strokes that a task asks for, laid on the bars that were gone through.
 *
 * Conventions: seconds of the report's clock; beats counted from the start of the round, as a real number.
 */
import type { Voice } from '@shedbook/core';
import { askedPhase, beatOf, type LoopTask, type TaskStroke } from '../loop/task.ts';
import type { PlayedBar } from './played.ts';

/** A stroke that was due. */
export interface Due {
  readonly asked: TaskStroke;
  readonly voice: Voice;
  readonly seconds: number;
  /** Where it is written, however what was asked is taken. */
  readonly writtenSeconds: number;
  /** How far from there a stroke is still this one: half of the way to the next slot. */
  readonly reachSeconds: number;
  /** A beat, or what one would last if all were of one length. */
  readonly beatSeconds: number;
  /** Beats from the start of the round. */
  readonly beats: number;
  readonly bar: PlayedBar;
}

/** A stroke farther than this from its place is another one, however slow the tempo. */
const MOST_REACH_SECONDS = 0.15;

/** Where in the beat a stroke that is asked for lies. */
export type PhaseOf = (stroke: TaskStroke, phase: number) => number;

function asWritten(_: TaskStroke, phase: number): number {
  return phase;
}

/** From which beat on each bar lies, by when it came: a bar that is left out takes no time. */
function beatsBefore(bars: readonly PlayedBar[], beatsInBar: number): ReadonlyMap<PlayedBar, number> {
  let beats = 0;
  return new Map(
    bars.map((bar, index) => {
      const before = bars[index - 1];
      if (before) beats += (beatsInBar * (bar.startSeconds - before.startSeconds)) / before.barSeconds;
      return [bar, beats];
    }),
  );
}

/** What is due in the bars of a take, in order of time. @param phaseOf where in its beat a stroke is to lie instead */
export function dueIn(
  bars: readonly PlayedBar[],
  task: LoopTask,
  phaseOf: PhaseOf = asWritten,
): readonly Due[] {
  const inBar = task.beats.length;
  const before = beatsBefore(bars, inBar);
  return bars
    .flatMap((bar) => {
      const beatSeconds = bar.barSeconds / inBar;
      return task.strokes
        .filter(({ written }) => written.bar === bar.bar)
        .map((asked): Due => {
          const beat = beatOf(task.beats, asked.written);
          const phase = askedPhase(task, asked);
          const inBarAt = (at: number) => inBar * (beat.start + beat.length * at);
          const beatInBar = inBarAt(phaseOf(asked, phase));
          return {
            asked,
            voice: asked.voice,
            seconds: bar.startSeconds + beatInBar * beatSeconds,
            writtenSeconds: bar.startSeconds + inBarAt(phase) * beatSeconds,
            reachSeconds: Math.min(MOST_REACH_SECONDS, beatSeconds / (2 * Math.max(2, asked.slots))),
            beatSeconds,
            beats: (before.get(bar) ?? 0) + beatInBar,
            bar,
          };
        });
    })
    .toSorted((a, b) => a.seconds - b.seconds);
}

/** The same strokes, all so many beats later; those that would fall behind the last bar are not due. */
export function shifted(due: readonly Due[], beats: number, bars: readonly PlayedBar[]): readonly Due[] {
  const first = bars[0];
  const last = bars.at(-1);
  if (!first || !last) return [];
  const end = last.startSeconds + last.barSeconds;
  return due
    .map((one) => ({ ...one, seconds: one.seconds + beats * one.beatSeconds, beats: one.beats + beats }))
    .filter(({ seconds, reachSeconds }) => {
      return seconds > first.startSeconds - reachSeconds && seconds < end - reachSeconds;
    });
}
