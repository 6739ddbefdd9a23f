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

/** Whose take it is, and what the student's page calls it. */
export interface TakeName {
  readonly student: string;
  readonly take: string;
}

/** A recording of a take. Another recording of the same take is another file, so that neither writes over the other. */
export interface TakeFile extends TakeName {
  /** Of what is in it. */
  readonly checksum: string;
}

/** The files. */
export interface TakeFiles {
  /** Writes one; it is on the disk when this is done. */
  write(file: TakeFile, content: Uint8Array): Promise<void>;
  /** Reads one; null where it is not there. */
  read(file: TakeFile): Promise<Uint8Array | null>;
  /** Deletes one, where it is there. */
  remove(file: TakeFile): Promise<void>;
  /** Deletes whatever is none of these and was not written just now, by another server perhaps. */
  keepOnly(files: readonly TakeFile[]): Promise<void>;
  /** Gives files the names that they have now; an older program named them without their checksums. */
  nameAnew(files: readonly TakeFile[]): Promise<void>;
}

const ENDING = '.zip';

/** Milliseconds after which nobody can be writing a file any more. */
const SETTLED_MS = 3_600_000;

function nameFrom(parts: readonly string[]): string {
  return createHash('sha256').update(JSON.stringify(parts)).digest('hex').concat(ENDING);
}

/** A name for the disk: ids come from outside. */
export function takeFileName({ student, take, checksum }: TakeFile): string {
  return nameFrom([student, take, checksum]);
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

/** Bytes that are overwritten at once. */
const WIPED_AT_ONCE = 1024 * 1024;

/**
 * Overwrites a file with zeros and deletes it; nothing where it is not there. A disk that writes elsewhere than it is
 * told, as those without moving parts do, may keep what was there until it needs the room.
 */
async function wipe(path: string): Promise<void> {
  try {
    const handle = await open(path, 'r+');
    try {
      const { size } = await handle.stat();
      for (let at = 0; at < size; at += WIPED_AT_ONCE)
        await handle.write(new Uint8Array(Math.min(WIPED_AT_ONCE, size - at)), 0, null, at);
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (!isMissing(error)) throw error;
  }
  await rm(path, { force: true });
}

/** The files in a folder of the store, which is made where it is not there. */
export function openTakeFiles(dataDir: string): TakeFiles {
  const folder = join(dataDir, TAKES_FOLDER);
  const pathOf = (file: TakeFile) => join(folder, takeFileName(file));
  return {
    write: async (file, content) => {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      const unfinished = join(folder, `${randomUUID()}.part`);
      const handle = await open(unfinished, 'wx', 0o600);
      try {
        await handle.writeFile(content);
        await handle.sync();
      } finally {
        await handle.close();
      }
      await rename(unfinished, pathOf(file));
      await syncFolder(folder);
    },
    read: async (file) => {
      try {
        return await readFile(pathOf(file));
      } catch (error) {
        if (isMissing(error)) return null;
        throw error;
      }
    },
    remove: (file) => wipe(pathOf(file)),
    nameAnew: async (files) => {
      const there = new Set(existsSync(folder) ? await readdir(folder) : []);
      for (const file of files) {
        const before = nameFrom([file.student, file.take]);
        if (there.has(before)) await rename(join(folder, before), pathOf(file));
      }
    },
    keepOnly: async (files) => {
      const wanted = new Set(files.map(takeFileName));
      const there = existsSync(folder) ? await readdir(folder) : [];
      for (const each of there.filter((name) => !wanted.has(name))) {
        const path = join(folder, each);
        if (Date.now() - (await stat(path)).mtimeMs > SETTLED_MS) await wipe(path);
      }
    },
  };
}
