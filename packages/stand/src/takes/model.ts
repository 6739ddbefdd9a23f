/**
 * The model of a take: what it should have been, stroke by stroke, in step with the recording.
 *
 * Conventions: seconds from the start of the recording less its latency, so that model and take sound together.
 */

import { type Form, isVoice, type Lesson, perform, Seconds } from '@shedbook/core';
import { rootMeanSquare } from '@shedbook/signal';
import type { SoundingStroke } from '@shedbook/sound';
import type { PlayedTake } from './played-take.ts';

/** The strokes of the model. */
export function modelStrokes(
  lesson: Lesson,
  form: Form,
  take: Pick<PlayedTake, 'layers' | 'loops'> & { readonly number: number | null },
): readonly SoundingStroke[] {
  const once = { ...form, repeat: 1, countInBars: 0 };
  return take.loops.flatMap(({ startSeconds, bpm }) => {
    const { strokes } = perform(lesson, { exercise: take.number, form: once, bpm, layers: take.layers });
    return strokes.map((stroke) => ({ ...stroke, timeSeconds: Seconds(stroke.timeSeconds + startSeconds) }));
  });
}

/** What a kit played, as strokes that can be sounded. */
export function playedStrokes(
  take: Pick<PlayedTake, 'report' | 'latencySeconds'>,
): readonly SoundingStroke[] {
  return (take.report?.strokes ?? []).flatMap(({ voice, levelDb, timeSeconds }): SoundingStroke[] =>
    isVoice(voice)
      ? [
          {
            voice,
            levelDb,
            articulation: 'normal',
            mark: 'x',
            timeSeconds: Seconds(Math.max(0, timeSeconds - take.latencySeconds)),
          },
        ]
      : [],
  );
}

/** Gains that are not gone beyond: a silent take is not hiss made loud. */
const LEAST_GAIN = 0.25;
const MOST_GAIN = 12;

/**
 * The gain that makes a take as loud as its model, so that neither is preferred for being louder.
 * @param take mono samples of the take
 * @param model mono samples of the model
 */
export function matchingGain(take: Float32Array, model: Float32Array): number {
  const own = rootMeanSquare(take);
  const wanted = rootMeanSquare(model);
  if (own === 0 || wanted === 0) return 1;
  return Math.min(MOST_GAIN, Math.max(LEAST_GAIN, wanted / own));
}
