/** Films of a lesson: planned, made, asked after, fetched and left off. */
import type { HeardPerformance } from '@shedbook/routes';
import type { FilmMaker } from '../films/film-maker.ts';
import type { FilmedPerformance } from '../films/film-messages.ts';
import type { LessonStore } from '../store/lessons.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** What films are made with. */
export interface FilmParts {
  readonly store: LessonStore;
  readonly films: FilmMaker;
}

/** Why a performance was not heard, as the desk is told. */
const REFUSED = {
  errors: 'lesson-has-errors',
  'no-ffmpeg': 'no-ffmpeg',
  'no-such-performance': 'no-such-performance',
  'not-followed': 'performance-not-followed',
  unreadable: 'performance-unreadable',
} as const;

function told({ recorded, faults }: FilmedPerformance): HeardPerformance {
  const { exercise, sounding, picture } = recorded;
  const seconds = sounding.toSeconds - sounding.fromSeconds;
  return { exercise, seconds, faults, hasPicture: picture !== null };
}

/** Answers the routes of films. */
export function filmHandlers({ store, films }: FilmParts) {
  const planned = async (id: string, wish: Parameters<FilmMaker['plan']>[1], signal: AbortSignal) => {
    const lesson = await store.read(id);
    if (!lesson) return refuse('no-such-lesson', {});
    const plan = await films.plan(lesson, wish, signal);
    if (plan === 'errors') return refuse('lesson-has-errors', {});
    if (plan === 'no-such-performance') return refuse(plan, {});
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
    takeFilm: async ({ params: { id }, body }) => {
      if (!(await store.read(id))) return refuse('no-such-lesson', {});
      const state = await films.take(id, body);
      return state ? answer(state) : refuse('no-such-performance', {});
    },
    beginPerformance: async () => answer({ performance: await films.performances.begin() }),
    sendPerformance: async ({ params: { performance, at }, body }) =>
      (await films.performances.put(performance, at, body))
        ? answer(null)
        : refuse('no-such-performance', {}),
    dropPerformance: async ({ params: { performance } }) =>
      (await films.performances.drop(performance)) ? answer(null) : refuse('no-such-performance', {}),
    hearPerformance: async ({ params: { id }, body }, signal) => {
      const lesson = await store.read(id);
      if (!lesson) return refuse('no-such-lesson', {});
      const came = await films.hear(lesson, body, signal);
      switch (came.kind) {
        case 'heard':
          return answer(told(came.heard));
        case 'other-exercise':
          return refuse('performance-of-another', { exercise: came.exercise });
        default:
          return refuse(REFUSED[came.kind], {});
      }
    },
    readFilm: async ({ params: { film } }) => {
      const state = await films.state(film);
      return state ? answer(state) : refuse('no-such-film', {});
    },
    fetchFilm: async ({ params: { film, part } }) => {
      const file = await films.file(film, part);
      return file ? answer(file) : refuse('no-such-film', {});
    },
    cancelFilm: async ({ params: { film } }) =>
      (await films.cancel(film)) ? answer(null) : refuse('no-such-film', {}),
  } satisfies Partial<Handlers>;
}
