/** Films for a pack: one of each exercise, one after the other, with how far they are and a way to leave off. */
import type { FilmState, FilmWish } from '@shedbook/routes';
import { useEffect, useRef, useState } from 'react';
import { ask } from '../document/client.ts';
import { type MadeFile, makeHere } from '../filming/film-thread.ts';
import { FILM_LOOK_MS, mayHelp, textOf } from './film-on-its-way.ts';
import { sendInParts } from './send-parts.ts';

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
function shareOf({ at, share }: Pick<FilmState, 'at' | 'share'>): number {
  if (at === 'made') return 1;
  return at === 'picture' ? 0.1 + 0.9 * share : 0.1 * share;
}

/** What a film is made for, how far it is, and whether it is still wanted. */
interface OneFilm {
  /** Id of the lesson. */
  readonly id: string;
  readonly wish: FilmWish;
  readonly tell: (share: number) => void;
  readonly isWanted: () => boolean;
}

/** Follows a film of the server until it is made. @returns its id, or null where it was left off */
async function madeThere(first: FilmState, { tell, isWanted }: OneFilm): Promise<string | null> {
  let state = first;
  for (;;) {
    if (!isWanted()) {
      ask('cancelFilm', { params: { film: state.id } }).catch(() => undefined);
      return null;
    }
    if (state.at === 'made') return state.id;
    if (state.at === 'failed') throw new Error('The film was not made');
    tell(shareOf(state));
    await pause(FILM_LOOK_MS);
    state = await ask('readFilm', { params: { film: state.id } });
  }
}

/** How much of the work on a film that is made here is done when it is sent. */
const SENT_SHARE = 0.95;

/** Makes a film in this browser; null where it was left off. */
async function contentMadeHere({ id, wish, tell, isWanted }: OneFilm): Promise<MadeFile | null> {
  const text = await textOf(id);
  return new Promise((resolve, reject) => {
    const leaveOff = makeHere(
      { text, wish },
      {
        progress: (at, share) => {
          tell(SENT_SHARE * shareOf({ at, share }));
          if (isWanted()) return;
          leaveOff();
          resolve(null);
        },
        made: (files) => resolve(files.find(({ part }) => part === 'film') ?? null),
        failed: () => reject(new Error('The film was not made')),
      },
    );
  });
}

/** Makes a film in this browser and sends it. @returns its id on the server, or null where it was left off */
async function madeHere(one: OneFilm): Promise<string | null> {
  const { id, wish, tell, isWanted } = one;
  const made = await contentMadeHere(one);
  const [exercise] = wish.exercises;
  if (!made || exercise === undefined) return null;
  const { content, name } = made;
  const performance = await sendInParts(content, {
    tell: (share) => tell(SENT_SHARE + (1 - SENT_SHARE) * share),
    isWanted,
  });
  if (performance === null) return null;
  const ending = name.endsWith('.mp4') ? '.mp4' : '.webm';
  const body = { performance, bytes: content.size, exercise, ending } as const;
  return (await ask('takeFilm', { params: { id }, body })).id;
}

/** Makes a film, on the server or else here. @returns its id, or null where it was left off. @throws where it cannot be made */
async function makeOne(one: OneFilm): Promise<string | null> {
  const { id, wish } = one;
  try {
    return await madeThere(await ask('makeFilm', { params: { id }, body: wish }), one);
  } catch (error) {
    if (!mayHelp(error, wish)) throw error;
    return madeHere(one);
  }
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
          const film = await makeOne({ id, wish, tell, isWanted: () => mine.isWanted });
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
