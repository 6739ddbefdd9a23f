/** What the page and the thread that makes recordings say to each other. */
import type { AudioFormat } from '@shedbook/pack';
import type { SpokenLanguage } from '@shedbook/sound';

/** Asks for recordings of a lesson. */
export interface RecordOrder {
  /** The lesson's text. */
  readonly text: string;
  /** Numbers of the exercises. */
  readonly exercises: readonly number[];
  readonly format: AudioFormat;
  /** Name of the form; null for the one that plays when none is named. */
  readonly form: string | null;
  /** How many layers play, from 1; several for a recording of each stage. */
  readonly layers: readonly number[];
  /** Quarter notes a minute; null for the start tempo of each section. */
  readonly bpm: number | null;
  readonly click: boolean;
  /** What is counted aloud, as it was recorded; null where nothing is. */
  readonly spoken: { readonly language: SpokenLanguage; readonly samples: Float32Array } | null;
}

/** How far they are, and what came of them. */
export type RecordReport =
  | { readonly kind: 'making'; readonly number: number; readonly total: number }
  | { readonly kind: 'made'; readonly name: string; readonly content: Uint8Array<ArrayBuffer> };
