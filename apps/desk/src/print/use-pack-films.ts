/** Films for a pack: one of each exercise, one after the other, with how far they are and a way to leave off. */
import type { FilmState, FilmWish } from '@shedbook/routes';
import { useEffect, useRef, useState } from 'react';
import { ask } from '../document/client.ts';
import { FILM_LOOK_MS } from './film-on-its-way.ts';

/** How far they are. */
export interface PackFilming {
  /** The film that is being made, counted from 1. */
  readonly n: number;
  /** How many films there are. */
  readonly of: number;
  /** How much of all of them is done, 0 to 1. */
  readonly share: number;
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, ms);
  });
}

/** Of a film that is on its way its sound is the first tenth. */
function shareOf({ at, share }: FilmState): number {
  if (at === 'made') return 1;
  return at === 'picture' ? 0.1 + 0.9 * share : 0.1 * share;
}

/** Makes films for a pack of a lesson; what is being made is left off when the page goes. */
export function usePackFilms(id: string) {
  const [filming, show] = useState<PackFilming | null>(null);
  const run = useRef<{ isWanted: boolean } | null>(null);
  const cancel = () => {
    if (run.current) run.current.isWanted = false;
    run.current = null;
    show(null);
  };
  useEffect(
    () => () => {
      if (run.current) run.current.isWanted = false;
    },
    [],
  );
  /** Makes one. @returns its id, or null where it was left off. @throws where it cannot be made */
  const makeOne = async (mine: { isWanted: boolean }, body: FilmWish, tell: (share: number) => void) => {
    let state = await ask('makeFilm', { params: { id }, body });
    for (;;) {
      if (!mine.isWanted) {
        ask('cancelFilm', { params: { film: state.id } }).catch(() => undefined);
        return null;
      }
      if (state.at === 'made') return state.id;
      if (state.at === 'failed') throw new Error('The film was not made');
      tell(shareOf(state));
      await pause(FILM_LOOK_MS);
      state = await ask('readFilm', { params: { film: state.id } });
    }
  };
  return {
    filming,
    /** @returns ids of the films, or null where they were left off. @throws where one cannot be made */
    make: async (wishes: readonly FilmWish[]): Promise<readonly string[] | null> => {
      const mine = { isWanted: true };
      run.current = mine;
      const made: string[] = [];
      try {
        for (const [index, wish] of wishes.entries()) {
          const tell = (share: number) =>
            show({ n: index + 1, of: wishes.length, share: (index + share) / wishes.length });
          tell(0);
          const film = await makeOne(mine, wish, tell);
          if (film === null) return null;
          made.push(film);
        }
        return made;
      } finally {
        if (run.current === mine) cancel();
      }
    },
    cancel,
  };
}
