/**
 * From one event to the voices that were struck in it, at once and without the rest of the take.
 *
 * Conventions: presence as logits. A voice that is written within reach needs less than one that is not; of
 * voices that one hand plays on one thing, only the likeliest is taken.
 */
import { VOICES, type Voice } from '@shedbook/core';
import type { HeardEvent } from '../detect/events.ts';

/** A voice that was struck. */
export interface Struck {
  readonly voice: Voice;
  readonly timeSeconds: number;
  readonly levelDb: number;
  readonly confidence: number;
}

/** Logits that a written and an unwritten voice need. */
const WRITTEN = -0.4;
const UNWRITTEN = 1.6;
/** What being written adds where two voices of one thing are compared. */
const FAVOUR = 2;
const WIDEST_OFFSET_MS = 25;

const ONE_THING: readonly (readonly Voice[])[] = [
  ['snare', 'sidestick', 'rimshot'],
  ['hihat', 'hihat-open'],
];

/** The voices struck in an event. `isWritten` says whether a voice is written within reach of a time. */
export function struckVoices(
  event: HeardEvent,
  isWritten: (voice: Voice, seconds: number) => boolean,
): readonly Struck[] {
  const heard = VOICES.flatMap((voice, index) => {
    const logit = event.presence[index]!;
    const offsetMs = Math.max(-WIDEST_OFFSET_MS, Math.min(WIDEST_OFFSET_MS, event.offsetMs[index]!));
    const timeSeconds = event.timeSeconds + offsetMs / 1000;
    if (logit < WRITTEN) return [];
    const written = isWritten(voice, timeSeconds);
    if (!written && logit < UNWRITTEN) return [];
    const strength = logit + (written ? FAVOUR : 0);
    return [
      { voice, timeSeconds, levelDb: event.levelDb[index]!, confidence: sigmoid(strength - 1), strength },
    ];
  });
  const isBeaten = (one: (typeof heard)[number]) =>
    ONE_THING.some(
      (group) =>
        group.includes(one.voice) &&
        heard.some((other) => group.includes(other.voice) && other.strength > one.strength),
    );
  return heard
    .filter((one) => !isBeaten(one))
    .map(({ voice, timeSeconds, levelDb, confidence }) => ({ voice, timeSeconds, levelDb, confidence }));
}

function sigmoid(x: number): number {
  return 1 / (1 + Math.exp(-x));
}
