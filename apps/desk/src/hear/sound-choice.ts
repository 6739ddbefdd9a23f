/** What can be chosen about the sound. */
import type { SoundingVoice, Subdivision, Voice } from '@shedbook/core';
import type { ClickGap } from '@shedbook/sound';

/** Where the click falls while it is on. */
export interface ClickChoice {
  /** On every beat, or on every second one: 2 and 4. */
  readonly beats: 'all' | 'second';
  /** Slots of a beat that are marked quietly; 1 for none. */
  readonly subdivision: Subdivision;
  /** Bars in which it drops out, or null. */
  readonly gap: ClickGap | null;
  /** Whether it is counted aloud over it. */
  readonly isSpoken: boolean;
  /** Bars of count-in; null: as many as the form has. */
  readonly countInBars: number | null;
}

/** A click on every beat, as the form counts in. */
export const PLAIN_CLICK: ClickChoice = {
  beats: 'all',
  subdivision: 1,
  gap: null,
  isSpoken: false,
  countInBars: null,
};

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
  readonly clicks: ClickChoice;
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
  clicks: PLAIN_CLICK,
  mute: [],
  trimDb: {},
};
