/**
 * Whose turn it is in a line check: for each voice a count of four, then eight strokes; the count is the rest of the one before.
 *
 * Conventions: seconds from the first count; the sound of a turn begins with the last count, so that a hand that is early and
 * a device that is late are both of it.
 */
import { type Lesson, sectionsOf, type Voice } from '@shedbook/core';
import { HEARD_VOICES, type Limb } from '@shedbook/listen';

/** A steady tempo that a beginner's foot plays, as a line check wants it: 120 a minute. */
const BEAT_SECONDS = 0.5;
const COUNT_BEATS = 4;
/** As many as a line check is learnt from. */
const STROKES = 8;
const TURN_BEATS = COUNT_BEATS + STROKES;
/** How long a turn lasts. */
const TURN_SECONDS = TURN_BEATS * BEAT_SECONDS;
/** The sound of a turn begins so long after its first count. */
const SOUND_AFTER_SECONDS = (COUNT_BEATS - 1) * BEAT_SECONDS;

/** What is counted now. */
export interface Turn {
  /** Which voice, from 0. */
  readonly index: number;
  readonly isCount: boolean;
  /** Which count or stroke, from 1. */
  readonly beat: number;
}

/** The voices that a line check of a lesson asks for, once each: those of its grooves and exercises that the ear tells apart. */
export function voicesToCheck(lesson: Lesson): readonly Voice[] {
  const parts = sectionsOf(lesson).flatMap(({ groove, exercises }) => [
    ...groove,
    ...exercises.flatMap((exercise) => exercise.parts),
  ]);
  const written = new Set(parts.map(({ voice }) => voice));
  return HEARD_VOICES.flatMap((voice) => (voice !== 'click' && written.has(voice) ? [voice] : []));
}

/** What is counted at a moment; null once all turns are over. */
export function turnAt(seconds: number, voices: number): Turn | null {
  const beats = Math.max(0, Math.floor(seconds / BEAT_SECONDS));
  const index = Math.floor(beats / TURN_BEATS);
  if (index >= voices) return null;
  const inTurn = beats - index * TURN_BEATS;
  const isCount = inTurn < COUNT_BEATS;
  return { index, isCount, beat: 1 + inTurn - (isCount ? 0 : COUNT_BEATS) };
}

/** How long the turns of so many voices last, with what is waited for after the last stroke. */
export function lengthOf(voices: number): number {
  return voices * TURN_SECONDS + SOUND_AFTER_SECONDS;
}

/** From when to when the turns of so many voices sound. */
export function soundSpan(voices: number): { readonly fromSeconds: number; readonly toSeconds: number } {
  return { fromSeconds: SOUND_AFTER_SECONDS, toSeconds: lengthOf(voices) };
}

/** Parts a recording of {@link soundSpan} into turns of the same length. */
export function soundsOf(samples: Float32Array, voices: readonly Voice[]): ReadonlyMap<Voice, Float32Array> {
  const each = Math.floor(samples.length / voices.length);
  return new Map(voices.map((voice, i) => [voice, samples.slice(i * each, (i + 1) * each)]));
}

/** Turns one after another as one recording, and from when to when each voice plays in it. */
export function joined(
  sounds: ReadonlyMap<Voice, Float32Array>,
  sampleRateHz: number,
): { readonly samples: Float32Array; readonly limbs: readonly Limb[] } {
  const samples = new Float32Array([...sounds.values()].reduce((sum, { length }) => sum + length, 0));
  const limbs: Limb[] = [];
  let at = 0;
  for (const [voice, sound] of sounds) {
    samples.set(sound, at);
    const fromSeconds = at / sampleRateHz;
    at += sound.length;
    limbs.push({ voice, fromSeconds, toSeconds: at / sampleRateHz });
  }
  return { samples, limbs };
}
