/** A film on its way, wherever it is made: by the server, or by this browser where the server has no FFmpeg. */
import { addressOf, type FilmPart, type FilmState, type FilmWish, ROUTES } from '@shedbook/routes';
import type { DeskWords } from '@shedbook/words';
import { ask, RefusedError } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { type MadeFile, makeHere } from '../filming/film-thread.ts';

/** A file of a film, and where it can be had. */
export interface FilmLink {
  readonly part: FilmPart;
  readonly name: string;
  readonly bytes: number;
  readonly href: string;
}

/** A film on its way, wherever it is made. */
export interface FilmOnItsWay extends Pick<FilmState, 'at' | 'share' | 'leftSeconds'> {
  readonly files: readonly FilmLink[];
}

/** How far it is, or why there is none. */
export type Filming =
  | { readonly at: 'ready' | 'asking' | 'cancelled' }
  | { readonly at: 'refused'; readonly why: string }
  | { readonly at: 'going'; readonly film: FilmOnItsWay };

/** Milliseconds between two looks at a film. */
export const FILM_LOOK_MS = 700;

/** Whether a browser may help: the server has no FFmpeg, and no performance has to be read. */
export function mayHelp(error: unknown, { over }: FilmWish): boolean {
  return error instanceof RefusedError && error.code === 'no-ffmpeg' && over === null;
}

/** A lesson as it is kept. */
export async function textOf(id: string): Promise<string> {
  return (await ask('readLesson', { params: { id } })).text;
}

function isOver({ at }: Pick<FilmState, 'at'>): boolean {
  return at === 'made' || at === 'failed';
}

/** A film that the server makes, as it is shown. */
function ofServer({ id: film, at, share, leftSeconds, files }: FilmState): FilmOnItsWay {
  const links = files.map((file) => ({
    ...file,
    href: addressOf(ROUTES.fetchFilm, { film, part: file.part }),
  }));
  return { at, share, leftSeconds, files: links };
}

/** A film that somebody makes: how it is left off. */
export interface Making {
  readonly leaveOff: () => void;
}

/** Follows a film of the server until it is over. */
export function followServer(first: FilmState, show: (filming: Filming) => void, words: DeskWords): Making {
  let look: ReturnType<typeof setTimeout> | undefined;
  let [state, isWanted] = [first, true];
  const told = (next: FilmState) => {
    if (!isWanted) return;
    state = next;
    show({ at: 'going', film: ofServer(next) });
    if (!isOver(next)) lookAgain();
  };
  const lookAgain = () => {
    look = setTimeout(() => {
      ask('readFilm', { params: { film: state.id } }).then(told, (error: unknown) =>
        error instanceof RefusedError ? show({ at: 'refused', why: wordsFor(error, words) }) : lookAgain(),
      );
    }, FILM_LOOK_MS);
  };
  told(first);
  return {
    leaveOff: () => {
      isWanted = false;
      clearTimeout(look);
      // What is made is kept by the server for a while, whether this page stays or not.
      if (!isOver(state)) ask('cancelFilm', { params: { film: state.id } }).catch(() => undefined);
    },
  };
}

function linked({ part, name, content }: MadeFile): FilmLink {
  return { part, name, bytes: content.size, href: URL.createObjectURL(content) };
}

/** Makes a film in this browser. */
export function followHere(text: string, wish: FilmWish, show: (filming: Filming) => void): Making {
  let files: readonly FilmLink[] = [];
  let pictureSince: number | null = null;
  const tell = (at: FilmState['at'], share: number, leftSeconds: number | null = null) =>
    show({ at: 'going', film: { at, share, leftSeconds, files } });
  const end = makeHere(
    { text, wish },
    {
      progress: (stage, part) => {
        if (stage === 'picture') pictureSince ??= performance.now();
        const since = pictureSince === null ? null : (performance.now() - pictureSince) / 1000;
        tell(stage, part, since === null || part === 0 ? null : since * (1 / part - 1));
      },
      made: (content) => {
        files = content.map(linked);
        tell('made', 1);
      },
      failed: () => tell('failed', 0),
    },
  );
  tell('sound', 0);
  return {
    leaveOff: () => {
      end();
      for (const { href } of files) URL.revokeObjectURL(href);
    },
  };
}
