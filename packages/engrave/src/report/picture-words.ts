/**
 * The words that a picture of a report is drawn with. Drawing knows no language: whoever asks for a picture hands them
 * over.
 */
import type { Voice } from '@shedbook/core';

/** Headings, marks and numbers in the reader's language. */
export interface PictureWords {
  readonly voices: Readonly<Record<Voice, string>>;
  /** How early or late something is, in ms, positive late: `24 ms late`, or that it is in time. */
  readonly lateness: (ms: number) => string;
  readonly voice: string;
  readonly heard: string;
  readonly extra: string;
  readonly time: string;
  readonly spread: string;
  readonly level: string;
  readonly balance: string;
  readonly asked: string;
  readonly played: string;
  readonly tempo: string;
  readonly heardOf: (values: {
    /** Number of strokes heard. */
    readonly hits: number;
    /** Number of strokes written. */
    readonly due: number;
  }) => string;
  /** How a displacement of so many ms is drawn. */
  readonly displacement: (values: { readonly ms: number }) => string;
  readonly missedMark: string;
  readonly extraMark: string;
  /** So many bars are not drawn. */
  readonly moreBars: (values: {
    /** Number of bars. */
    readonly bars: number;
  }) => string;
  /** How far strokes lie around their place. */
  readonly spreadMs: (values: { readonly ms: number }) => string;
  /** A level with its sign. */
  readonly decibels: (values: { readonly db: number }) => string;
  readonly seconds: (values: { readonly seconds: number }) => string;
  /** A tempo on the axis. */
  readonly bpm: (values: { readonly bpm: number }) => string;
}

/** Everything that a picture says. */
export interface PictureText {
  readonly title: string;
  /** One line: tempo, start, swing. */
  readonly summary: string;
  /** What a teacher says, the strongest first. */
  readonly sentences: readonly string[];
  /** What could not be heard. */
  readonly unheard: readonly string[];
  readonly words: PictureWords;
}
