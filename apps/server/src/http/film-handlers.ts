/** Films of a lesson: planned, made, asked after, fetched and left off. */
import type { FilmMaker } from '../films/film-maker.ts';
import type { LessonStore } from '../store/lessons.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** What films are made with. */
export interface FilmParts {
  readonly store: LessonStore;
  readonly films: FilmMaker;
}

/** Answers the routes of films. */
export function filmHandlers({ store, films }: FilmParts) {
  const planned = async (id: string, wish: Parameters<FilmMaker['plan']>[1], signal: AbortSignal) => {
    const lesson = await store.read(id);
    if (!lesson) return refuse('no-such-lesson', {});
    const plan = await films.plan(lesson, wish, signal);
    if (plan === 'errors') return refuse('lesson-has-errors', {});
    return plan === 'no-ffmpeg' ? refuse('no-ffmpeg', {}) : { kind: 'planned' as const, lesson, ...plan };
  };
  return {
    planFilm: async ({ params: { id }, body }, signal) => {
      const outcome = await planned(id, body, signal);
      return outcome.kind === 'planned' ? answer(outcome.plan) : outcome;
    },
    makeFilm: async ({ params: { id }, body }, signal) => {
      const outcome = await planned(id, body, signal);
      if (outcome.kind !== 'planned') return outcome;
      return answer(await films.make({ ...outcome.lesson, title: outcome.title }, body));
    },
    readFilm: async ({ params: { film } }) => {
      const state = films.state(film);
      return state ? answer(state) : refuse('no-such-film', {});
    },
    fetchFilm: async ({ params: { film, part } }) => {
      const file = films.file(film, part);
      return file ? answer(file) : refuse('no-such-film', {});
    },
    cancelFilm: async ({ params: { film } }) =>
      (await films.cancel(film)) ? answer(null) : refuse('no-such-film', {}),
  } satisfies Partial<Handlers>;
}
