/**
 * When the limbs strike, for second passes: what a limb can keep up, and when the groove has it.
 *
 * Conventions: seconds at the goal tempo from the start of the exercise, which is looped. Where the groove is longer
 * than the exercise, a limb is busy wherever it is in one of the ways that they meet.
 * Source: one hand keeps up 5 to 7 strokes a second (Fujii, Kudo, Ohtsuki & Oda 2009, Neuroscience Letters 459(2)): the
 * upper end is the bound for every two strokes of one hand; a foot keeps up three quarters of it (ours).
 */
import {
  commonGrid,
  type Lesson,
  type Limb,
  type Mark,
  type Pattern,
  struckSlots,
  type Voice,
} from '@shedbook/core';
import { readGround } from '../ground.ts';
import { FOOT_SHARE, PUBLISHED_HAND_RATE } from '../hand-speed.ts';

/** A stroke with its time. Bars, beats in the bar and slots from 0. */
export interface TimedStroke {
  readonly voice: Voice;
  readonly bar: number;
  readonly beat: number;
  readonly slot: number;
  readonly slots: number;
  readonly mark: Mark;
  readonly seconds: number;
}

const ROUNDING_SECONDS = 1e-9;

/** Least time between two strokes of a limb, in seconds. */
export function leastGapSeconds(limb: Limb): number {
  return 1 / (limb.endsWith('foot') ? PUBLISHED_HAND_RATE * FOOT_SHARE : PUBLISHED_HAND_RATE);
}

/** Length of so many bars at the goal tempo, in seconds. */
export function lengthSeconds(lesson: Lesson, bars: number): number {
  const ground = readGround(lesson, 1);
  return bars * lesson.meter.beats.reduce((sum, _, beat) => sum + ground.beatSeconds(beat), 0);
}

/** The strokes of a voice's pattern in order of time. */
export function timedStrokes(lesson: Lesson, voice: Voice, pattern: Pattern): readonly TimedStroke[] {
  const ground = readGround(lesson, 1);
  let start = 0;
  return pattern.bars.flatMap((cells, bar) =>
    cells.flatMap((cell, beat) => {
      const length = ground.beatSeconds(beat);
      const slots = cell.marks.length;
      const strokes = struckSlots(cell).map((slot): TimedStroke => {
        const seconds = start + ground.phase(beat, slot, slots) * length;
        return { voice, bar, beat, slot, slots, mark: cell.marks[slot] as Mark, seconds };
      });
      start += length;
      return strokes;
    }),
  );
}

/** The times at which the groove has a limb, without the voices that the exercise plays. */
export function busySeconds(
  lesson: Lesson,
  limb: Limb,
  played: readonly Voice[],
  bars: number,
): readonly number[] {
  const length = lengthSeconds(lesson, bars);
  return lesson.groove
    .filter(({ voice }) => lesson.limbs[voice] === limb && !played.includes(voice))
    .flatMap(({ voice, pattern }) => {
      const all = commonGrid([pattern.bars.length, bars]);
      const looped = Array.from({ length: all }, (_, bar) => pattern.bars[bar % pattern.bars.length] ?? []);
      return timedStrokes(lesson, voice, { bars: looped }).map((stroke) => stroke.seconds % length);
    });
}

/** Whether a limb that strikes at some times can strike at one more, all of it looped. */
export function hasTime(limb: Limb, times: readonly number[], seconds: number, length: number): boolean {
  const gap = leastGapSeconds(limb) - ROUNDING_SECONDS;
  return times.every((time) => {
    const apart = Math.abs(time - seconds) % length;
    return Math.min(apart, length - apart) >= gap;
  });
}
