/** What the server and the thread that makes films say to each other. */
import type { FilmFile, FilmProgress } from '@shedbook/host/film';
import type { FilmPlan, FilmWish } from '@shedbook/routes';

/** Asks what a film will be, or for the film. */
export interface FilmOrder {
  readonly text: string;
  readonly wish: FilmWish;
  /** Where the film goes, in a folder of its own in which everything else may be put, too; null to plan it only. */
  readonly out: string | null;
}

/** How far the film is. */
export type FilmNews = FilmProgress & { readonly kind: 'progress' };

/** An answer to an order; `errors` where the text is no lesson, `no-ffmpeg` where FFmpeg or an encoder is missing. */
export type FilmAnswer =
  | { readonly kind: 'planned'; readonly title: string; readonly plan: FilmPlan }
  | { readonly kind: 'made'; readonly files: readonly FilmFile[] }
  | { readonly kind: 'errors' | 'no-ffmpeg' }
  | { readonly kind: 'broken'; readonly message: string };
