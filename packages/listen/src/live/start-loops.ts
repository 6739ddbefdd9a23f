/** Takes that were recorded along with a click: every bar is known beforehand. */
import { inSection, perform, Seconds } from '@shedbook/core';
import type { Asked } from '../listened.ts';
import type { LiveListener } from './live-stroke.ts';

/** A bar counts when the last stroke lies at least this share of it after its beginning: more than an end on the 1. */
const LEAST_SHARE = 0.3;

/**
 * Begins bars one after the other, and loop after loop, for a take whose count-in began with its recording.
 * @param lastSeconds when the last stroke was played, the latency taken off
 * @returns how many bars.
 */
export function startLoops(listener: LiveListener, asked: Asked, lastSeconds: Seconds): number {
  const { lesson, exercise, form } = inSection(asked);
  const bpm = asked.bpm ?? lesson.tempo.startBpm;
  const { bars, countInSeconds } = perform(lesson, { exercise, form, bpm });
  const { durationSeconds } = bars.at(-1)!;
  let count = 0;
  let at = countInSeconds;
  for (; at + LEAST_SHARE * durationSeconds <= lastSeconds; at = Seconds(at + durationSeconds)) {
    listener.bar(at, bpm);
    count += 1;
  }
  return count;
}
