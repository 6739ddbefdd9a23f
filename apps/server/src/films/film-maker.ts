/**
 * Films on their way, one at a time and the others waiting, in a thread beside the server; what a film will be is told by
 * another thread meanwhile.
 *
 * Conventions: a film lies in a folder of its own, with all that is needed to make it; the folder goes as a whole when
 * the film is cancelled or fails, when nobody has asked after it for a while, and when the server ends.
 */
import { randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, extname, join } from 'node:path';
import { fileNameOf } from '@shedbook/core';
import { createThread, threadFile } from '@shedbook/host';
import type { FilmFile } from '@shedbook/host/film';
import type { FilmPart, FilmPlan, FilmState, FilmWish, PerformanceWish, SentFile } from '@shedbook/routes';
import type { FilmAnswer, FilmedPerformance, FilmNews, FilmOrder, HearOrder } from './film-messages.ts';
import { keepPerformances, type Performances } from './performances.ts';

/** A lesson to film. */
export interface FilmedLesson {
  readonly id: string;
  readonly text: string;
}

/** What a film will be, and of what lesson. */
export interface PlannedFilm {
  readonly title: string;
  readonly plan: FilmPlan;
}

/** A film of an exercise, and where it lies. */
export interface PackedFilm {
  readonly exercise: number;
  readonly path: string;
}

/** Makes films. */
export interface FilmMaker {
  /** What a film will be, or why there will be none. */
  plan(
    lesson: FilmedLesson,
    wish: FilmWish,
    signal: AbortSignal,
  ): Promise<PlannedFilm | 'errors' | 'no-ffmpeg' | 'no-such-performance'>;
  /** Performances that were sent. */
  readonly performances: Pick<Performances, 'begin' | 'put' | 'drop'>;
  /** Performances that were heard, of each exercise the one with the fewest faults; null where one of them is not there. */
  heard(ids: readonly string[]): readonly FilmedPerformance[] | null;
  /** Listens to a performance; it is kept for films and packs. */
  hear(lesson: FilmedLesson, wish: PerformanceWish, signal: AbortSignal): Promise<HearAnswer>;
  /** Begins a film. */
  make(lesson: FilmedLesson & Pick<PlannedFilm, 'title'>, wish: FilmWish): Promise<FilmState>;
  /** How far a film is; null where there is none. */
  state(id: string): FilmState | null;
  /** A file of a film that was made; null where there is none. */
  file(id: string, part: FilmPart): SentFile | null;
  /** Films of one exercise of a lesson each, to go into its pack; null where one of them is no such film. */
  packed(lesson: string, ids: readonly string[]): readonly PackedFilm[] | null;
  /** Leaves a film off, or throws it away. @returns whether there was one */
  cancel(id: string): Promise<boolean>;
  close(): Promise<void>;
}

/** What came of listening to a performance. */
export type HearAnswer =
  | Exclude<FilmAnswer, { readonly kind: 'planned' | 'made' | 'broken' }>
  | { readonly kind: 'no-such-performance' };

interface OneFilm {
  /** Id of the lesson, and the exercises that it shows. */
  readonly lesson: string;
  readonly exercises: readonly number[];
  readonly folder: string;
  readonly control: AbortController;
  state: FilmState;
  files: readonly FilmFile[];
  pictureSince: number | null;
  /** When somebody asked after it last. */
  asked: number;
}

/** Milliseconds that planning and making take at most. */
const PLAN_MS = 60_000;
const HEAR_MS = 15 * 60_000;
const MAKE_MS = 4 * 3_600_000;
/** A film that is being made, and one that was made, go when nobody has asked after them for so many milliseconds. */
const ALONE_MS = 60_000;
const KEPT_MS = 3_600_000;
const LOOK_MS = 10_000;
/** Bytes for objects of the thread. */
const MEMORY_BYTES = 2 ** 30;

/** Media types by endings. */
const TYPES: Readonly<Record<string, string>> = {
  '.mp4': 'video/mp4',
  '.webm': 'video/webm',
  '.vtt': 'text/vtt',
  '.txt': 'text/plain',
  '.png': 'image/png',
};

function partOf({ what, path }: FilmFile): FilmPart {
  if (what !== 'captions') return what;
  return path.endsWith('.de.vtt') ? 'captions-de' : 'captions-en';
}

/** A maker; its threads start with the first film. @param now milliseconds that never go back */
export function createFilmMaker(now: () => number): FilmMaker {
  const open = () =>
    createThread<FilmOrder | HearOrder, FilmAnswer, FilmNews>(threadFile(import.meta.url, 'film-worker'), {
      memoryBytes: MEMORY_BYTES,
    });
  const [planning, making] = [open(), open()];
  const films = new Map<string, OneFilm>();
  let root: Promise<string> | null = null;
  const rootFolder = () => {
    root ??= mkdtemp(join(tmpdir(), 'shedbook-films-'));
    return root;
  };
  const performances = keepPerformances(rootFolder, now);
  const remove = async (id: string): Promise<boolean> => {
    const film = films.get(id);
    films.delete(id);
    film?.control.abort();
    if (film) await rm(film.folder, { recursive: true, force: true, maxRetries: 5 });
    return film !== undefined;
  };
  const look = setInterval(() => {
    for (const [id, { asked, state }] of films)
      if (now() - asked > (state.at === 'made' ? KEPT_MS : ALONE_MS)) void remove(id);
  }, LOOK_MS);
  look.unref();
  const hear = (film: OneFilm, { stage, part }: FilmNews) => {
    if (stage === 'picture') film.pictureSince ??= now();
    const since = film.pictureSince === null ? null : (now() - film.pictureSince) / 1000;
    const leftSeconds = since === null || part === 0 ? null : since * (1 / part - 1);
    film.state = { ...film.state, at: stage, share: part, leftSeconds };
  };
  const end = async (film: OneFilm, answer: FilmAnswer): Promise<void> => {
    if (answer.kind !== 'made') {
      if (answer.kind === 'broken') process.stderr.write(`Internal error: ${answer.message}\n`);
      film.state = { ...film.state, at: 'failed', leftSeconds: null };
      return rm(film.folder, { recursive: true, force: true, maxRetries: 5 });
    }
    film.files = answer.files;
    const files = answer.files.map((file) => ({
      ...{ part: partOf(file), name: basename(file.path), bytes: file.bytes },
    }));
    film.state = { ...film.state, at: 'made', share: 1, leftSeconds: 0, files };
  };
  return {
    performances,
    heard: performances.best,
    hear: async ({ id, text }, { performance, exercise, form }, signal) => {
      const path = performances.pathOf(performance);
      if (path === null) return { kind: 'no-such-performance' };
      const terms = { of: id, deadlineMs: HEAR_MS, signal, endsWhenLeft: true };
      const answer = await planning.ask({ want: 'heard', text, path, exercise, form }, terms);
      if (answer.kind === 'broken') throw new Error(answer.message);
      if (answer.kind === 'planned' || answer.kind === 'made')
        throw new Error('Internal error: a film instead of what is heard');
      if (answer.kind === 'heard') performances.keep(performance, answer.heard);
      return answer;
    },
    plan: async ({ id, text }, wish, signal) => {
      const over = performances.best(wish.over?.performances ?? []);
      if (!over) return 'no-such-performance';
      const terms = { of: id, deadlineMs: PLAN_MS, signal };
      const answer = await planning.ask({ want: 'film', text, wish, over, stem: null }, terms);
      if (answer.kind === 'planned') return answer;
      if (answer.kind === 'errors' || answer.kind === 'no-ffmpeg') return answer.kind;
      throw new Error(
        answer.kind === 'broken' ? answer.message : `Internal error: ${answer.kind}, not a plan`,
      );
    },
    make: async ({ id: lesson, title, text }, wish) => {
      const over = performances.best(wish.over?.performances ?? []) ?? [];
      const id = randomUUID();
      const folder = join(await rootFolder(), id);
      await mkdir(folder);
      const control = new AbortController();
      const state: FilmState = { id, at: 'waiting', share: 0, leftSeconds: null, files: [] };
      const { exercises } = wish;
      const film: OneFilm = {
        ...{ lesson, exercises, folder, control, state },
        ...{ files: [], pictureSince: null, asked: now() },
      };
      films.set(id, film);
      const stem = join(folder, fileNameOf(title, ''));
      const terms = { of: lesson, deadlineMs: MAKE_MS, signal: control.signal, endsWhenLeft: true };
      making
        .ask({ want: 'film', text, wish, over, stem }, { ...terms, tell: (news) => hear(film, news) })
        .catch((error: Error): FilmAnswer => ({ kind: 'broken', message: error.message }))
        .then((answer) => (control.signal.aborted ? undefined : end(film, answer)))
        .catch(() => undefined);
      return state;
    },
    state: (id) => {
      const film = films.get(id);
      if (!film) return null;
      film.asked = now();
      return film.state;
    },
    file: (id, part) => {
      const found = films.get(id)?.files.find((file) => partOf(file) === part);
      if (!found) return null;
      const type = TYPES[extname(found.path)] ?? 'application/octet-stream';
      return { name: basename(found.path), type, content: createReadStream(found.path) };
    },
    packed: (lesson, ids) => {
      const found = ids.map((id): PackedFilm | null => {
        const film = films.get(id);
        if (film) film.asked = now();
        const path = film?.files.find(({ what }) => what === 'film')?.path;
        const [exercise, ...others] = film?.lesson === lesson ? film.exercises : [];
        return path !== undefined && exercise !== undefined && others.length === 0
          ? { exercise, path }
          : null;
      });
      const there = found.filter((each) => each !== null);
      // Of several of one exercise the last.
      return there.length < ids.length
        ? null
        : [...new Map(there.map((each) => [each.exercise, each])).values()];
    },
    cancel: remove,
    close: async () => {
      clearInterval(look);
      await planning.close();
      await making.close();
      if (root) await rm(await root, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
