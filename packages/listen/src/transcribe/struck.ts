/**
 * A stroke that was heard without a score.
 *
 * Conventions: seconds from the take's first sample; levels in dB on the source's own scale.
 */
import type { Seconds, Voice } from '@shedbook/core';

/** One stroke of one voice. */
export interface StruckVoice {
  readonly timeSeconds: Seconds;
  readonly voice: Voice;
  readonly levelDb: number;
  /** The louder voice under which it was not heard: it is taken from the other beats. None of what was heard. */
  readonly under?: Voice;
}

/** A stroke that is written and was not heard. */
export interface AssumedStroke extends StruckVoice {
  readonly under: Voice;
}

/** Moments at which something was struck, each once, in order. */
export function momentsOf(strokes: readonly StruckVoice[]): readonly number[] {
  const moments: number[] = [];
  for (const { timeSeconds } of strokes)
    if (timeSeconds - (moments.at(-1) ?? Number.NEGATIVE_INFINITY) > TOGETHER_SECONDS)
      moments.push(timeSeconds);
  return moments;
}

/** Strokes nearer than this are one moment. */
const TOGETHER_SECONDS = 0.03;

/** Voices that keep time. */
export const TIME_KEEPERS: readonly Voice[] = ['ride', 'hihat', 'hihat-open'];
/** Time is kept from a stroke on that so many follow within so many seconds. */
const KEPT = { strokes: 3, seconds: 2.6 } as const;
/** So many strokes keep time; fewer come and go. */
const FEWEST_KEPT = 8;

/**
 * The strokes from where time is kept on, without what comes before it: sticks that count in, a stand that is put right.
 * All of them where nobody keeps time.
 */
export function fromTheCount(strokes: readonly StruckVoice[]): readonly StruckVoice[] {
  const kept = strokes.filter(({ voice }) => TIME_KEEPERS.includes(voice));
  if (kept.length < FEWEST_KEPT) return strokes;
  const first = kept.find((stroke, i) => {
    const later = kept[i + KEPT.strokes];
    return later !== undefined && later.timeSeconds - stroke.timeSeconds < KEPT.seconds;
  });
  if (!first) return strokes;
  return strokes.filter(({ timeSeconds }) => timeSeconds > first.timeSeconds - 2 * TOGETHER_SECONDS);
}
