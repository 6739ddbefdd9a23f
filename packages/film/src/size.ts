/** Kinds of file that a film can be, and how large it will be. */
import type { Film } from './film.ts';
import type { FilmRequest } from './scenes.ts';

/** Kinds of file that a film can be, by their endings. */
export const FILM_ENDINGS = ['.mp4', '.webm'] as const;

/** A kind of file. */
export type FilmEnding = (typeof FILM_ENDINGS)[number];

/** Bytes of a second of film at full size, sound and all, by kind and frames a second: means of films of three demo lessons. */
const BYTES_PER_SECOND: Readonly<
  Record<FilmEnding, Readonly<Record<FilmRequest['framesPerSecond'], number>>>
> = {
  '.mp4': { 30: 75_000, 60: 92_000 },
  '.webm': { 30: 39_000, 60: 43_000 },
};

/** How large a film over no performance will be, in bytes, within a factor of two. */
export function estimateFilmBytes(
  { frames, request }: Pick<Film, 'frames' | 'request'>,
  ending: FilmEnding,
): number {
  const { framesPerSecond } = request;
  return Math.round((frames / framesPerSecond) * BYTES_PER_SECOND[ending][framesPerSecond]);
}
