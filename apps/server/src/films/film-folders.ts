/**
 * What films need and what became of them, in folders beside the store that outlast the server: whichever server of a store
 * makes a film finds its order there, and whichever is asked for it finds the film.
 *
 * Conventions: a folder has the number of its film. Each try at it has a folder of its own within, so that none writes into
 * another's; what is made is named by a file that is written last. Paths are kept from the folder of their film, since each
 * server may find it elsewhere.
 */
import { randomUUID } from 'node:crypto';
import { copyFile, link, mkdir, rm, stat } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import type { FilmFile } from '@shedbook/host/film';
import type { FilmWish } from '@shedbook/routes';
import { namesIn, readIfThere, SETTLED_MS, writeWhole } from '../store/whole-files.ts';
import type { FilmedPerformance } from './film-messages.ts';

/** What a film is made of. */
export interface FilmMaking {
  /** The title of the lesson, and its text as it was then. */
  readonly title: string;
  readonly text: string;
  readonly wish: FilmWish;
  /** Performances that it follows, and where they lie. */
  readonly over: readonly FilmedPerformance[];
}

/** A film that is ordered, or that was sent as it was made elsewhere. */
export interface OrderedFilm {
  /** Id of the lesson. */
  readonly lesson: string;
  readonly exercises: readonly number[];
  /** Null where it came made. */
  readonly making: FilmMaking | null;
}

/** The folders. */
export interface FilmFolders {
  /** Keeps an order, and the performances with it. */
  order(id: string, film: OrderedFilm): Promise<void>;
  ordered(id: string): Promise<OrderedFilm | null>;
  /** A new empty folder to make a film in; what an earlier try left is gone. */
  begin(id: string): Promise<string>;
  /** Notes what was made. */
  made(id: string, files: readonly FilmFile[]): Promise<void>;
  /** What was made; none where that is not over. */
  files(id: string): Promise<readonly FilmFile[]>;
  remove(id: string): Promise<void>;
  /** Removes what belongs to none of these films and was not begun just now. */
  keepOnly(ids: ReadonlySet<string>): Promise<void>;
}

/** Name of the folder of all films. */
export const FILMS_FOLDER = 'films';

const [ORDER, MADE, TRY] = ['order', 'made', 'try-'];

/** Puts a file at another place as well, without a copy where the disk can do that. */
export async function putAlso(from: string, to: string): Promise<void> {
  await link(from, to).catch(() => copyFile(from, to));
}

async function readIn<Value>(folder: string, name: string): Promise<Value | null> {
  const content = await readIfThere(join(folder, name));
  return content ? (deserialize(content) as Value) : null;
}

/** Folders beside the store. */
export function openFilmFolders(dataDir: string): FilmFolders {
  const root = join(dataDir, FILMS_FOLDER);
  const folderOf = (id: string) => join(root, id);
  const foundIn = <File extends { readonly path: string }>(id: string, files: readonly File[]) =>
    files.map((file) => ({ ...file, path: join(folderOf(id), file.path) }));
  const remove = (path: string) => rm(path, { recursive: true, force: true, maxRetries: 5 });
  return {
    order: async (id, film) => {
      const folder = folderOf(id);
      await mkdir(folder, { recursive: true, mode: 0o700 });
      const over: FilmedPerformance[] = [];
      for (const [n, each] of (film.making?.over ?? []).entries()) {
        const path = `performance-${n}`;
        await putAlso(each.path, join(folder, path));
        over.push({ ...each, path });
      }
      const making = film.making && { ...film.making, over };
      await writeWhole(folder, ORDER, serialize({ ...film, making }));
    },
    ordered: async (id) => {
      const film = await readIn<OrderedFilm>(folderOf(id), ORDER);
      if (!film?.making) return film;
      return { ...film, making: { ...film.making, over: foundIn(id, film.making.over) } };
    },
    begin: async (id) => {
      const folder = folderOf(id);
      for (const each of await namesIn(folder)) if (each.startsWith(TRY)) await remove(join(folder, each));
      const fresh = join(folder, `${TRY}${randomUUID()}`);
      await mkdir(fresh);
      return fresh;
    },
    made: (id, files) => {
      const kept = files.map((file) => ({ ...file, path: relative(folderOf(id), file.path) }));
      return writeWhole(folderOf(id), MADE, serialize(kept));
    },
    files: async (id) => foundIn(id, (await readIn<readonly FilmFile[]>(folderOf(id), MADE)) ?? []),
    remove: (id) => remove(folderOf(id)),
    keepOnly: async (ids) => {
      for (const each of (await namesIn(root)).filter((name) => !ids.has(name))) {
        const path = folderOf(each);
        const { mtimeMs } = await stat(path);
        if (Date.now() - mtimeMs > SETTLED_MS) await remove(path);
      }
    },
  };
}
