/** What the page and the worker that makes films say to each other. */
import type { FilmPart, FilmPlan, FilmWish } from '@shedbook/routes';

/** Asks what a film will be, or for the film. */
export interface FilmOrder {
  readonly want: 'plan' | 'film';
  /** The lesson. */
  readonly text: string;
  /** Over no performance. */
  readonly wish: FilmWish;
  /** The words of a spoken count as they were recorded; null where nothing is said. */
  readonly spoken: Float32Array | null;
}

/** A file that was made. */
export interface FilmContent {
  readonly part: FilmPart;
  readonly ending: string;
  readonly content: Blob;
}

/** How far a film is. */
export interface FilmProgress {
  readonly kind: 'progress';
  readonly stage: 'sound' | 'picture';
  /** 0 to 1, of this stage. */
  readonly part: number;
}

/** What the worker says; `unable` where this browser encodes no film. */
export type FilmNews =
  | { readonly kind: 'planned'; readonly plan: FilmPlan }
  | { readonly kind: 'unable' | 'broken' }
  | FilmProgress
  | { readonly kind: 'made'; readonly title: string; readonly files: readonly FilmContent[] };
