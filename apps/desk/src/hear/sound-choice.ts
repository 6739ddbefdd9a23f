/** What can be chosen about the sound. */
import type { SoundingVoice, Voice } from '@shedbook/core';

/** What was chosen in place of what the lesson says; it holds as long as the lesson says the same. */
export interface Instead<T> {
  readonly value: T;
  /** What the lesson said when it was chosen. */
  readonly of: T;
}

/** Everything that can be chosen about the sound; null is what the lesson says. */
export interface SoundChoice {
  /** Exercise that plays, or null for time alone. */
  readonly exercise: number | null;
  /** Name of the form; null where none was chosen. */
  readonly form: string | null;
  /** Bar of the exercise that goes round alone, from 0; null: the whole form. */
  readonly bar: number | null;
  /** What joins with the last layer of the groove that plays; null for all layers. */
  readonly upTo: Voice | 'pattern' | null;
  /** Quarter notes a minute. */
  readonly bpm: Instead<number> | null;
  /** Text of a feel. */
  readonly feel: Instead<string> | null;
  readonly click: boolean;
  readonly mute: readonly SoundingVoice[];
  readonly trimDb: Readonly<Partial<Record<SoundingVoice, number>>>;
}

/** Nothing chosen: everything as the lesson says it. */
export const AS_WRITTEN: Omit<SoundChoice, 'exercise'> = {
  form: null,
  bar: null,
  upTo: null,
  bpm: null,
  feel: null,
  click: false,
  mute: [],
  trimDb: {},
};
