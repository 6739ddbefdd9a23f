/** Films that this browser makes by itself: asked for by the page, made beside it. */
import { fileNameOf } from '@shedbook/core';
import type { FilmPart, FilmPlan, FilmWish } from '@shedbook/routes';
import { loadSpoken } from '@shedbook/stand/spoken-words';
import type { FilmContent, FilmNews, FilmOrder } from './messages.ts';

/** What is to be filmed. */
export interface FilmOfText {
  /** The lesson. */
  readonly text: string;
  /** Over no performance. */
  readonly wish: FilmWish;
}

/** A file that was made: kept by the page for as long as it is open. */
export interface MadeFile {
  readonly part: FilmPart;
  readonly content: Blob;
  readonly name: string;
}

/** What a film that is being made tells. */
export interface FilmHearer {
  readonly progress: (stage: 'sound' | 'picture', part: number) => void;
  readonly made: (files: readonly MadeFile[]) => void;
  readonly failed: () => void;
}

/** Gives a worker its order. @returns what ends it */
function send(order: FilmOrder, hear: (news: FilmNews) => void): () => void {
  const thread = new Worker(new URL('./film.worker.ts', import.meta.url), { type: 'module' });
  thread.onmessage = ({ data }: MessageEvent<FilmNews>) => hear(data);
  thread.onerror = () => hear({ kind: 'broken' });
  thread.postMessage(order);
  return () => thread.terminate();
}

/** What a film will be that this browser makes; null where it can make none. */
export function planHere(film: FilmOfText): Promise<FilmPlan | null> {
  return new Promise((resolve) => {
    const end = send({ want: 'plan', ...film, spoken: null }, (news) => {
      end();
      resolve(news.kind === 'planned' ? news.plan : null);
    });
  });
}

function named(title: string, files: readonly FilmContent[]): readonly MadeFile[] {
  return files.map(({ part, ending, content }) => ({ part, content, name: fileNameOf(title, ending) }));
}

/** Makes a film. @returns what leaves it off */
export function makeHere({ text, wish }: FilmOfText, hearer: FilmHearer): () => void {
  let [end, isWanted] = [() => {}, true];
  const hear = (news: FilmNews) => {
    if (news.kind === 'progress') return hearer.progress(news.stage, news.part);
    end();
    return news.kind === 'made' ? hearer.made(named(news.title, news.files)) : hearer.failed();
  };
  const loading = wish.countAloud ? loadSpoken(wish.language) : Promise.resolve(null);
  loading.then(
    (spoken) => {
      if (isWanted) end = send({ want: 'film', text, wish, spoken }, hear);
    },
    () => hearer.failed(),
  );
  return () => {
    isWanted = false;
    end();
  };
}
