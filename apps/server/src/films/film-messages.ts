/** What the server and the thread that makes films say to each other. */
import type { Recorded } from '@shedbook/film';
import type { FilmFile, FilmProgress } from '@shedbook/host/film';
import type { FilmPlan, FilmWish } from '@shedbook/routes';

/** A performance and where it lies. */
export interface FilmedPerformance {
  readonly recorded: Recorded;
  readonly path: string;
  /** Number of faults that a teacher would count. */
  readonly faults: number;
}

/** Asks what is heard of a performance. */
export interface HearOrder {
  readonly want: 'heard';
  readonly text: string;
  readonly path: string;
  readonly exercise: number;
  /** Name of the form; null for the usual one. */
  readonly form: string | null;
}

/** Asks what a film will be, or for the film. */
export interface FilmOrder {
  readonly want: 'film';
  readonly text: string;
  readonly wish: FilmWish;
  /** Performances that it follows, at most one of each exercise. */
  readonly over: readonly FilmedPerformance[];
  /** Where the film goes, without its ending, in a folder of its own for all else, too; null to plan it only. */
  readonly stem: string | null;
}

/** How far the film is. */
export type FilmNews = FilmProgress & { readonly kind: 'progress' };

/** An answer to an order; `errors` where the text is no lesson, `no-ffmpeg` where FFmpeg or an encoder is missing. */
export type FilmAnswer =
  | { readonly kind: 'planned'; readonly title: string; readonly plan: FilmPlan }
  | { readonly kind: 'made'; readonly files: readonly FilmFile[] }
  | { readonly kind: 'heard'; readonly heard: FilmedPerformance }
  | { readonly kind: 'unreadable' | 'not-followed' }
  | { readonly kind: 'other-exercise'; readonly exercise: number }
  | { readonly kind: 'errors' | 'no-ffmpeg' }
  | { readonly kind: 'broken'; readonly message: string };
