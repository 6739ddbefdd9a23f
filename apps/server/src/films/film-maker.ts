/**
 * Films on their way: in the queue of the store, and each server makes one at a time in a thread beside it; what a film will
 * be is told by another thread meanwhile.
 *
 * Conventions: a film lies in a folder of its own, with all that is needed to make it, and is gone on with when its server
 * was killed or ended; the folder goes as a whole when the film is cancelled or fails, and when nobody has asked after it
 * for a while.
 */
import { randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, extname, join } from 'node:path';
import { fileNameOf } from '@shedbook/core';
import { createThread, threadFile } from '@shedbook/host';
import type { FilmFile } from '@shedbook/host/film';
import type {
  FilmPart,
  FilmPlan,
  FilmState,
  FilmWish,
  PerformanceWish,
  SentFile,
  SentFilm,
} from '@shedbook/routes';
import type { WorkEnd, WorkQueue } from '../work/work-queue.ts';
import type { NewWork } from '../work/work-shelf.ts';
import { openFilmFolders, putAlso } from './film-folders.ts';
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
  /** Takes a film that was sent as performances are; null where it is not there as a whole. */
  take(lesson: string, sent: SentFilm): Promise<FilmState | null>;
  /** How far a film is; null where there is none. */
  state(id: string): Promise<FilmState | null>;
  /** A file of a film that was made; null where there is none. */
  file(id: string, part: FilmPart): Promise<SentFile | null>;
  /** Films of one exercise of a lesson each, to go into its pack; null where one of them is no such film. */
  packed(lesson: string, ids: readonly string[]): Promise<readonly PackedFilm[] | null>;
  /** Leaves a film off, or throws it away. @returns whether there was one */
  cancel(id: string): Promise<boolean>;
  /** Throws away all films of a lesson. */
  forget(lesson: string): Promise<void>;
  close(): Promise<void>;
}

/** What came of listening to a performance. */
export type HearAnswer =
  | Exclude<FilmAnswer, { readonly kind: 'planned' | 'made' | 'broken' }>
  | { readonly kind: 'no-such-performance' };

/** What films are made with. */
export interface FilmParts {
  readonly queue: WorkQueue;
  /** Folder of the store. */
  readonly dataDir: string;
  /** Milliseconds that never go back. */
  readonly now: () => number;
}

/** How far a film is, as the queue keeps it. */
type Told = Pick<FilmState, 'at' | 'leftSeconds' | 'share'>;

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

/** How far a film is, in a picture that began then. @param now milliseconds */
function toldOf({ stage, part }: FilmNews, pictureSince: number | null, now: number): Told {
  const since = pictureSince === null ? null : (now - pictureSince) / 1000;
  const leftSeconds = since === null || part === 0 ? null : since * (1 / part - 1);
  return { at: stage, share: part, leftSeconds };
}

function stateFile(file: FilmFile): FilmState['files'][number] {
  return { part: partOf(file), name: basename(file.path), bytes: file.bytes };
}

/** How a film is that was made. */
function madeState(id: string, files: readonly FilmFile[]): FilmState {
  return { id, at: 'made', share: 1, leftSeconds: 0, files: files.map(stateFile) };
}

const WAITING: Told = { at: 'waiting', share: 0, leftSeconds: null };

/** A maker; its threads start with the first film. */
export function createFilmMaker({ queue, dataDir, now }: FilmParts): FilmMaker {
  const open = () =>
    createThread<FilmOrder | HearOrder, FilmAnswer, FilmNews>(threadFile(import.meta.url, 'film-worker'), {
      memoryBytes: MEMORY_BYTES,
    });
  const [planning, making] = [open(), open()];
  const folders = openFilmFolders(dataDir);
  let root: Promise<string> | null = null;
  const rootFolder = () => {
    root ??= mkdtemp(join(tmpdir(), 'shedbook-films-'));
    return root;
  };
  const performances = keepPerformances(rootFolder, now);
  const remove = async (id: string): Promise<boolean> => {
    const wasThere = await queue.remove(id);
    if (wasThere) await folders.remove(id);
    return wasThere;
  };
  /** Throws away what nobody has asked after. */
  const lookRound = async () => {
    const all = await queue.list();
    for (const { id, at, idleMs } of all) if (idleMs > (at === 'done' ? KEPT_MS : ALONE_MS)) await remove(id);
    await folders.keepOnly(new Set(all.map(({ id }) => id)));
  };
  const look = setInterval(() => void lookRound().catch(() => undefined), LOOK_MS);
  look.unref();
  const makeOne = async (
    { id, of }: NewWork,
    signal: AbortSignal,
    tell: (told: string) => void,
  ): Promise<WorkEnd> => {
    // it came made, or its server ended just then
    if ((await folders.files(id)).length > 0) return { at: 'done', told: null };
    const ordered = await folders.ordered(id);
    if (!ordered?.making) return { at: 'failed', told: null };
    const { title, text, wish, over } = ordered.making;
    const stem = join(await folders.begin(id), fileNameOf(title, ''));
    let pictureSince: number | null = null;
    const hear = (news: FilmNews) => {
      if (news.stage === 'picture') pictureSince ??= now();
      tell(JSON.stringify(toldOf(news, pictureSince, now())));
    };
    const terms = { of, deadlineMs: MAKE_MS, signal, endsWhenLeft: true };
    const answer = await making.ask({ want: 'film', text, wish, over, stem }, { ...terms, tell: hear });
    if (answer.kind === 'broken') throw new Error(answer.message);
    if (answer.kind !== 'made') return { at: 'failed', told: null };
    await folders.made(id, answer.files);
    return { at: 'done', told: null };
  };
  queue.work('film', makeOne);
  /** Files of a film that was made; none where there is no such film. */
  const filesOf = async (id: string) => ((await queue.find(id)) ? folders.files(id) : []);
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
      const { exercises } = wish;
      await folders.order(id, { lesson, exercises, making: { title, text, wish, over } });
      await queue.add({ id, kind: 'film', of: lesson });
      return { id, ...WAITING, files: [] };
    },
    take: async (lesson, { performance, bytes, exercise, ending }) => {
      const sent = performances.pathOf(performance);
      if (sent === null || (await stat(sent)).size !== bytes) return null;
      const id = randomUUID();
      await folders.order(id, { lesson, exercises: [exercise], making: null });
      const path = join(await folders.begin(id), `film${ending}`);
      await putAlso(sent, path);
      await performances.drop(performance);
      const files: readonly FilmFile[] = [{ path, what: 'film', bytes }];
      await folders.made(id, files);
      await queue.add({ id, kind: 'film', of: lesson });
      return madeState(id, files);
    },
    state: async (id) => {
      const film = await queue.find(id);
      if (!film) return null;
      const files = await folders.files(id);
      if (files.length > 0) return madeState(id, files);
      switch (film.at) {
        case 'begun':
          return { id, ...(film.told ? (JSON.parse(film.told) as Told) : WAITING), files: [] };
        case 'waiting':
          return { id, ...WAITING, files: [] };
        default:
          return { id, ...WAITING, at: 'failed', files: [] };
      }
    },
    file: async (id, part) => {
      const found = (await filesOf(id)).find((file) => partOf(file) === part);
      if (!found) return null;
      const type = TYPES[extname(found.path)] ?? 'application/octet-stream';
      return { name: basename(found.path), type, content: createReadStream(found.path) };
    },
    packed: async (lesson, ids) => {
      const found: PackedFilm[] = [];
      for (const id of ids) {
        const path = (await filesOf(id)).find(({ what }) => what === 'film')?.path;
        const ordered = path === undefined ? null : await folders.ordered(id);
        const [exercise, ...others] = ordered?.lesson === lesson ? ordered.exercises : [];
        if (path === undefined || exercise === undefined || others.length > 0) return null;
        found.push({ exercise, path });
      }
      // Of several of one exercise the last.
      return [...new Map(found.map((each) => [each.exercise, each])).values()];
    },
    cancel: remove,
    forget: async (lesson) => {
      for (const { id, of } of await queue.list()) if (of === lesson) await remove(id);
    },
    close: async () => {
      clearInterval(look);
      await queue.close();
      await planning.close();
      await making.close();
      if (root) await rm(await root, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
