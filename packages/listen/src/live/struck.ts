/**
 * From one event to the voices that were struck in it, at once and without the rest of the take.
 *
 * Conventions: presence as logits. A voice that is written within reach needs less than one that is not; of
 * voices that one hand plays on one thing, only the likeliest is taken.
 */

import { Seconds, TakeDb, VOICES, type Voice } from '@shedbook/core';
import { sigmoid } from '@shedbook/signal';
import type { HeardEvent } from '../detect/events.ts';
import { isListenedFor, outputOf } from '../network/heard-voices.data.ts';

/** A voice that was struck. */
export interface Struck {
  readonly voice: Voice;
  readonly timeSeconds: Seconds;
  readonly levelDb: TakeDb;
  readonly confidence: number;
}

const WIDEST_OFFSET_MS = 25;
/** Logits that a stroke needs where it is not written, and of a voice that the exercise does not have. */
const ELSEWHERE = 1;
const STRANGER = 2.5;

/** Where the hand is that strikes each voice: of two voices at one place only the likelier is struck. */
const HAND_AT: Readonly<Record<Voice, 'snare' | 'time' | null>> = {
  ride: 'time',
  hihat: 'time',
  'hihat-open': 'time',
  'hihat-foot': null,
  bass: null,
  snare: 'snare',
  sidestick: 'snare',
  rimshot: 'snare',
  crash: null,
  'tom-high': null,
  'tom-mid': null,
  'tom-low': null,
  'tom-floor': null,
  splash: null,
  china: null,
  cowbell: 'time',
  clap: null,
};

interface Candidate extends Struck {
  /** How far over its threshold. */
  readonly over: number;
}

function isBeaten(one: Candidate, others: readonly Candidate[]): boolean {
  const hand = HAND_AT[one.voice];
  return hand !== null && others.some(({ voice, over }) => HAND_AT[voice] === hand && over > one.over);
}

/**
 * The voices struck in an event.
 * @param logits presence of each voice
 * @param isWritten whether a voice is written within reach of a time
 * @param asked the voices that the exercise has
 * @param needed logit that a stroke of a voice needs where it is written
 */
export function struckVoices(
  event: HeardEvent,
  logits: Float64Array,
  isWritten: (voice: Voice, seconds: number) => boolean,
  asked: ReadonlySet<Voice>,
  needed: (voice: Voice) => number,
): readonly Struck[] {
  const heard: Candidate[] = [];
  VOICES.filter(isListenedFor).forEach((voice) => {
    const index = outputOf(voice);
    const offsetMs = Math.max(-WIDEST_OFFSET_MS, Math.min(WIDEST_OFFSET_MS, event.offsetMs[index]!));
    const timeSeconds = Seconds(event.timeSeconds + offsetMs / 1000);
    const unwritten = asked.has(voice) ? ELSEWHERE : STRANGER;
    const over = logits[index]! - (isWritten(voice, timeSeconds) ? needed(voice) : unwritten);
    if (over < 0) return;
    heard.push({
      voice,
      timeSeconds,
      levelDb: TakeDb(event.levelDb[index]!),
      confidence: sigmoid(over),
      over,
    });
  });
  return heard.filter((one) => !isBeaten(one, heard)).map(({ over: _, ...struck }) => struck);
}
