/** A film on its way: what it will be, how far it is, and a way to leave off. */
import type { FilmPlan, FilmState, FilmWish } from '@shedbook/routes';
import { useEffect, useRef, useState } from 'react';
import { ask, RefusedError } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { useWords } from '../words/words.tsx';

/** How far it is, or why there is none. */
export type Filming =
  | { readonly at: 'ready' | 'asking' | 'cancelled' }
  | { readonly at: 'refused'; readonly why: string }
  | { readonly at: 'going'; readonly state: FilmState };

/** Milliseconds until a change is asked about. */
const SETTLED_MS = 400;
/** Milliseconds between two looks at a film. */
export const FILM_LOOK_MS = 700;

/** What a film will be as it is asked for; null while that is not known. */
export function useFilmPlan(id: string, wish: FilmWish): FilmPlan | string | null {
  const words = useWords();
  const [plan, setPlan] = useState<FilmPlan | string | null>(null);
  const key = JSON.stringify(wish);
  useEffect(() => {
    let isWanted = true;
    setPlan(null);
    const body = JSON.parse(key) as FilmWish;
    if (body.exercises.length === 0) return undefined;
    const look = setTimeout(() => {
      ask('planFilm', { params: { id }, body })
        .catch((error: unknown) => wordsFor(error, words))
        .then((known) => isWanted && setPlan(known));
    }, SETTLED_MS);
    return () => {
      isWanted = false;
      clearTimeout(look);
    };
  }, [id, key, words]);
  return plan;
}

function isOver({ at }: FilmState): boolean {
  return at === 'made' || at === 'failed';
}

/** Leaves off the film that is on its way, if there is one. */
function leaveOff(film: { current: string | null }): void {
  const going = film.current;
  film.current = null;
  if (going !== null) ask('cancelFilm', { params: { film: going } }).catch(() => undefined);
}

/** Makes films of a lesson, one at a time; what is being made is left off when the page goes. */
export function useFilm(id: string) {
  const words = useWords();
  const [filming, show] = useState<Filming>({ at: 'ready' });
  const film = useRef<string | null>(null);
  useEffect(() => () => leaveOff(film), []);
  const going = filming.at === 'going' && !isOver(filming.state) ? filming.state : null;
  useEffect(() => {
    if (!going) return undefined;
    const look = setTimeout(() => {
      ask('readFilm', { params: { film: going.id } }).then(
        (state) => {
          if (film.current !== state.id) return;
          // What is made is kept by the server for a while, whether this page stays or not.
          if (isOver(state)) film.current = null;
          show({ at: 'going', state });
        },
        (error: unknown) =>
          error instanceof RefusedError
            ? show({ at: 'refused', why: wordsFor(error, words) })
            : show({ at: 'going', state: { ...going } }),
      );
    }, FILM_LOOK_MS);
    return () => clearTimeout(look);
  }, [going, words]);
  return {
    filming,
    make: (body: FilmWish) => {
      leaveOff(film);
      show({ at: 'asking' });
      ask('makeFilm', { params: { id }, body }).then(
        (state) => {
          film.current = state.id;
          show({ at: 'going', state });
        },
        (error: unknown) => show({ at: 'refused', why: wordsFor(error, words) }),
      );
    },
    cancel: () => {
      leaveOff(film);
      show({ at: 'cancelled' });
    },
  };
}
