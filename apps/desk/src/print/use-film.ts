/** Films of a lesson: what one will be, how far it is, and a way to leave off. */
import type { FilmPlan, FilmWish } from '@shedbook/routes';
import type { DeskWords } from '@shedbook/words';
import { useCallback, useEffect, useRef, useState } from 'react';
import { ask } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { planHere } from '../filming/film-thread.ts';
import { useWords } from '../words/words.tsx';
import { type Filming, followHere, followServer, type Making, mayHelp, textOf } from './film-on-its-way.ts';

/** What a film will be, and whether this browser makes it because the server cannot. */
export interface PlannedFilm {
  readonly plan: FilmPlan;
  readonly isMadeHere: boolean;
}

/** Milliseconds until a change is asked about. */
const SETTLED_MS = 400;

/** What a film will be. @throws RefusedError where neither server nor browser makes it */
async function planned(id: string, body: FilmWish): Promise<PlannedFilm> {
  try {
    return { plan: await ask('planFilm', { params: { id }, body }), isMadeHere: false };
  } catch (error) {
    const plan = mayHelp(error, body) ? await planHere({ text: await textOf(id), wish: body }) : null;
    if (!plan) throw error;
    return { plan, isMadeHere: true };
  }
}

/** What a film will be as it is asked for; null while that is not known. */
export function useFilmPlan(id: string, wish: FilmWish): PlannedFilm | string | null {
  const words = useWords();
  const [plan, setPlan] = useState<PlannedFilm | string | null>(null);
  const key = JSON.stringify(wish);
  useEffect(() => {
    let isWanted = true;
    setPlan(null);
    const body = JSON.parse(key) as FilmWish;
    if (body.exercises.length === 0) return undefined;
    const look = setTimeout(() => {
      planned(id, body)
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

/** Begins a film, on the server or else here. @returns what follows it */
async function begun(id: string, wish: FilmWish, words: DeskWords) {
  try {
    const state = await ask('makeFilm', { params: { id }, body: wish });
    return (show: (filming: Filming) => void) => followServer(state, show, words);
  } catch (error) {
    if (!mayHelp(error, wish)) throw error;
    const text = await textOf(id);
    return (show: (filming: Filming) => void) => followHere(text, wish, show);
  }
}

/** Makes films of a lesson, one at a time; what is being made is left off when the page goes. */
export function useFilm(id: string) {
  const words = useWords();
  const [filming, show] = useState<Filming>({ at: 'ready' });
  const making = useRef<Making | null>(null);
  const asked = useRef(0);
  const leaveOff = useCallback(() => {
    asked.current += 1;
    making.current?.leaveOff();
    making.current = null;
  }, []);
  useEffect(() => leaveOff, [leaveOff]);
  return {
    filming,
    make: (wish: FilmWish) => {
      leaveOff();
      const mine = asked.current;
      show({ at: 'asking' });
      begun(id, wish, words).then(
        (follow) => {
          if (asked.current === mine) making.current = follow(show);
          else follow(() => undefined).leaveOff();
        },
        (error: unknown) => {
          if (asked.current === mine) show({ at: 'refused', why: wordsFor(error, words) });
        },
      );
    },
    cancel: () => {
      leaveOff();
      show({ at: 'cancelled' });
    },
  };
}
