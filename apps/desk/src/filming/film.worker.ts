/**
 * Makes films beside the page, where the computer that runs the desk has no FFmpeg. All of it is loaded from here, and
 * nothing of it stands here: where another module of a worker asks for the worker's first one, WebKit runs that a second
 * time, and its classes are then others.
 */
import type { FilmNews, FilmOrder } from './messages.ts';

const tell = (news: FilmNews) => self.postMessage(news);

self.onmessage = ({ data }: MessageEvent<FilmOrder>) => {
  import('./answer-film.ts')
    .then(({ answerFilm }) => answerFilm(data, tell))
    .then(tell, (error: unknown) => {
      console.error(error);
      tell({ kind: 'broken' });
    });
};
