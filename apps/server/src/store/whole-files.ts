/**
 * Files beside the store: written whole or not at all, and overwritten when they go.
 *
 * Conventions: a file is written under another name and then given its own, so that none is ever half there; only
 * whoever runs the server can read it.
 * Source: POSIX.1-2017, rename and fsync: after both, file and name outlast a power cut.
 */
import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, renameSync } from 'node:fs';
import { open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';

/** Milliseconds after which nobody can be writing a file any more. */
export const SETTLED_MS = 3_600_000;

/** Bytes that are overwritten at once. */
const WIPED_AT_ONCE = 1024 * 1024;

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

/** Writes a file of a folder, which is made where it is not there; it is on the disk when this is done. */
export async function writeWhole(folder: string, name: string, content: Uint8Array): Promise<void> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const unfinished = join(folder, `${randomUUID()}.part`);
  const handle = await open(unfinished, 'wx', 0o600);
  try {
    await handle.writeFile(content);
    await handle.sync();
  } finally {
    await handle.close();
  }
  await rename(unfinished, join(folder, name));
  await syncFolder(folder);
}

/** What is in a file; null where it is not there. */
export async function readIfThere(path: string): Promise<Uint8Array | null> {
  try {
    return await readFile(path);
  } catch (error) {
    if (isMissing(error)) return null;
    throw error;
  }
}

/**
 * Overwrites a file with zeros and deletes it; nothing where it is not there. A disk that writes elsewhere than it is
 * told, as those without moving parts do, may keep what was there until it needs the room.
 */
export async function wipe(path: string): Promise<void> {
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

/** Lays the files of a folder into another, beside those that are there: their names say what is in them, so none takes another's place. */
export async function layFiles(from: string, folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  for (const name of readdirSync(from)) renameSync(join(from, name), join(folder, name));
  await syncFolder(folder);
}

/** Names of the files of a folder; none where there is no such folder. */
export async function namesIn(folder: string): Promise<readonly string[]> {
  return existsSync(folder) ? readdir(folder) : [];
}

/** Wipes whatever has none of these names and was not written just now, by another server perhaps. */
export async function keepOnlyNamed(folder: string, wanted: ReadonlySet<string>): Promise<void> {
  for (const each of (await namesIn(folder)).filter((name) => !wanted.has(name))) {
    const path = join(folder, each);
    if (Date.now() - (await stat(path)).mtimeMs > SETTLED_MS) await wipe(path);
  }
}
