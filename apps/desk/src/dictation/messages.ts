/** What the page and the thread that writes a take down say to each other. */
import type { Feel, Meter } from '@shedbook/core';
import type { StruckVoice, Transcribed } from '@shedbook/listen';

/** A take: sound, a MIDI file, or the strokes of an electronic kit. */
export type Played =
  | { readonly kind: 'sound'; readonly samples: Float32Array<ArrayBuffer>; readonly sampleRateHz: number }
  | { readonly kind: 'midi'; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly kind: 'notes'; readonly notes: readonly StruckVoice[] };

/** Asks for a take to be written down, in the meter and feel of a lesson. */
export interface DictationOrder {
  readonly played: Played;
  readonly meter: Meter;
  readonly feel: Feel;
}

/** What was heard; null where the file is none. */
export type DictationAnswer = Transcribed | null;
