/**
 * From one event to the voices that were struck in it, at once and without the rest of the take.
 *
 * Conventions: presence as logits. A voice that is written within reach needs less than one that is not; of
 * voices that one hand plays on one thing, only the likeliest is taken.
 */

import { Seconds, TakeDb, VOICES, type Voice } from '@shedbook/core';
import { sigmoid } from '@shedbook/signal';
import type { Need } from '../decide/threshold.ts';
import type { HeardEvent } from '../detect/events.ts';
import { isListenedFor, outputOf } from '../network/heard-voices.data.ts';

/** A voice that was struck. */
export interface Struck {
  readonly voice: Voice;
  readonly timeSeconds: Seconds;
  readonly levelDb: TakeDb;
  readonly confidence: number;
  /** Whether it is known that its limb plays, or the stroke is clear by itself. */
  readonly isSure: boolean;
}

const WIDEST_OFFSET_MS = 25;
/** Logits that a stroke needs where it is not written, and of a voice that the exercise does not have. */
const ELSEWHERE = 1;
const STRANGER = 2.5;
/** From this logit on a stroke is clear, whatever is known of its limb: what a limb needs that stays out. */
const CLEAR = 2;

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

/** An event, and what is known by then. */
export interface StruckInput {
  readonly event: HeardEvent;
  /** Presence of each voice with the score, and without it. */
  readonly told: Float64Array;
  readonly free: Float64Array;
  /** Whether a voice is written within reach of a time. */
  readonly isWritten: (voice: Voice, seconds: number) => boolean;
  /** The voices that the exercise has. */
  readonly asked: ReadonlySet<Voice>;
  /** What a stroke of a voice needs where it is written. */
  readonly needed: (voice: Voice) => Need;
}

/** The voices struck in an event. */
export function struckVoices({
  event,
  told,
  free,
  isWritten,
  asked,
  needed,
}: StruckInput): readonly Struck[] {
  const heard: Candidate[] = [];
  VOICES.filter(isListenedFor).forEach((voice) => {
    const index = outputOf(voice);
    const offsetMs = Math.max(-WIDEST_OFFSET_MS, Math.min(WIDEST_OFFSET_MS, event.offsetMs[index]!));
    const timeSeconds = Seconds(event.timeSeconds + offsetMs / 1000);
    const unwritten = asked.has(voice) ? ELSEWHERE : STRANGER;
    const need = needed(voice);
    const over = told[index]! - (isWritten(voice, timeSeconds) ? need.written : unwritten);
    if (over < 0 || free[index]! < need.alone) return;
    heard.push({
      voice,
      timeSeconds,
      levelDb: TakeDb(event.levelDb[index]!),
      confidence: sigmoid(over),
      isSure: need.playing === 'yes' || told[index]! >= CLEAR,
      over,
    });
  });
  return heard.filter((one) => !isBeaten(one, heard)).map(({ over: _, ...struck }) => struck);
}
