/**
 * The files of takes, in a folder beside the store.
 *
 * Conventions: a file is written whole under another name and then given its own, so that none is ever half there; only
 * whoever runs the server can read them.
 * Source: POSIX.1-2017, rename and fsync: after both, file and name outlast a power cut.
 */
import { createHash, randomUUID } from 'node:crypto';
import { existsSync, mkdirSync } from 'node:fs';
import { open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';

/** Name of the folder. */
export const TAKES_FOLDER = 'takes';

/** Whose file it is: a student's, of one take. */
export interface TakeName {
  readonly student: string;
  readonly take: string;
}

/** The files. */
export interface TakeFiles {
  /** Writes one; it is on the disk when this is done. */
  write(name: TakeName, content: Uint8Array): Promise<void>;
  /** Reads one; null where it is not there. */
  read(name: TakeName): Promise<Uint8Array | null>;
  /** Deletes one, where it is there. */
  remove(name: TakeName): Promise<void>;
  /** Deletes whatever is none of these and was not written just now, by another server perhaps. */
  keepOnly(names: readonly TakeName[]): Promise<void>;
}

const ENDING = '.zip';

/** Milliseconds after which nobody can be writing a file any more. */
const SETTLED_MS = 3_600_000;

/** A name for the disk: ids come from outside. */
function fileNameOf({ student, take }: TakeName): string {
  return createHash('sha256')
    .update(JSON.stringify([student, take]))
    .digest('hex')
    .concat(ENDING);
}

async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

function isMissing(error: unknown): boolean {
  return (error as NodeJS.ErrnoException).code === 'ENOENT';
}

/** The files in a folder of the store, which is made where it is not there. */
export function openTakeFiles(dataDir: string): TakeFiles {
  const folder = join(dataDir, TAKES_FOLDER);
  const pathOf = (name: TakeName) => join(folder, fileNameOf(name));
  return {
    write: async (name, content) => {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      const unfinished = join(folder, `${randomUUID()}.part`);
      const handle = await open(unfinished, 'wx', 0o600);
      try {
        await handle.writeFile(content);
        await handle.sync();
      } finally {
        await handle.close();
      }
      await rename(unfinished, pathOf(name));
      await syncFolder(folder);
    },
    read: async (name) => {
      try {
        return await readFile(pathOf(name));
      } catch (error) {
        if (isMissing(error)) return null;
        throw error;
      }
    },
    remove: (name) => rm(pathOf(name), { force: true }),
    keepOnly: async (names) => {
      const wanted = new Set(names.map(fileNameOf));
      const there = existsSync(folder) ? await readdir(folder) : [];
      for (const each of there.filter((name) => !wanted.has(name))) {
        const path = join(folder, each);
        if (Date.now() - (await stat(path)).mtimeMs > SETTLED_MS) await rm(path, { force: true });
      }
    },
  };
}
