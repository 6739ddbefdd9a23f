/** What can be chosen about the sound. */
import type { SoundingVoice } from '@shedbook/core';

/** Everything that can be chosen about the sound. */
export interface SoundChoice {
  /** Exercise that plays, or null for time alone. */
  readonly exercise: number | null;
  /** Name of the form; null where none was chosen. */
  readonly form: string | null;
  /** Bar of the exercise that goes round alone, from 0; null: the whole form. */
  readonly bar: number | null;
  /** Layers of the groove that play, from 1. */
  readonly layers: number;
  readonly bpm: number;
  /** Text of a feel. */
  readonly feel: string;
  readonly click: boolean;
  readonly mute: readonly SoundingVoice[];
  readonly trimDb: Readonly<Partial<Record<SoundingVoice, number>>>;
}
