/** Text files that a command is given or writes. */
import { constants, copyFile, readFile, realpath, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { InputError, readUpTo, reasonOf, unreadableFile } from '@shedbook/host';
import type { CliWords } from '@shedbook/words';
import type { Speaker } from './terminal.ts';

/** Bytes of a text file at most: the longest lesson has three million where each code unit takes three. */
const MOST_BYTES = 4_000_000;

/**
 * Reads a text file.
 * @param expected what should be there, in the reader's words
 * @param called what it is called in a sentence
 * @throws InputError when it cannot be read.
 */
export async function readTextFile(
  path: string,
  expected: (words: CliWords['expected']) => string,
  called = path,
): Promise<string> {
  const bytes = await readUpTo(path, MOST_BYTES).catch((error: unknown) => {
    throw unreadableFile({ path, called, expected }, error);
  });
  return bytes.toString('utf8');
}

/** The error for a file that cannot be written. */
const unwritable = (path: string, error: unknown) =>
  new InputError((to) => to.words.unwritable({ file: path, why: reasonOf(error, to) }));

/** Writes a text file whole or not at all: whoever stops it half-way still has what was there. */
async function writeWhole(path: string, text: string): Promise<void> {
  // A link stays one: what it leads to is written.
  const file = await realpath(path).catch(() => path);
  const half = join(dirname(file), `.${basename(file)}.${process.pid}.part`);
  try {
    await writeFile(half, text);
    await rename(half, file);
  } catch (error) {
    await rm(half, { force: true });
    throw error;
  }
}

/** Writes a text file, over what was there. @throws InputError when it cannot be written */
export async function writeTextFile(path: string, text: string): Promise<void> {
  await writeWhole(path, text).catch((error: unknown) => {
    throw unwritable(path, error);
  });
}

/** The name under which a file is kept that another takes the place of: `first.before-2.lesson.yaml`. */
function nameBefore(path: string, time: number): string {
  const [name = '', ...rest] = basename(path).split('.');
  return join(dirname(path), [name, time === 1 ? 'before' : `before-${time}`, ...rest].join('.'));
}

/** Keeps a copy of a file under the first name that is free. @returns its path, null where there was no file */
async function keepBefore(path: string): Promise<string | null> {
  for (let time = 1; ; time += 1) {
    const kept = nameBefore(path, time);
    try {
      await copyFile(path, kept, constants.COPYFILE_EXCL);
      return kept;
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'ENOENT') return null;
      if (code !== 'EEXIST') throw unwritable(kept, error);
    }
  }
}

/**
 * Writes a text file in the place of another, which is kept beside it, and says so, unless both say the same.
 * @throws InputError when it cannot be written
 */
export async function replaceTextFile(path: string, text: string, terminal: Speaker): Promise<void> {
  const before = await readFile(path, 'utf8').catch(() => null);
  const kept = before === text ? null : await keepBefore(path);
  await writeTextFile(path, text);
  if (kept !== null) terminal.warn(terminal.catalogue.words.before({ file: path, kept }));
}

/** Writes a text file that is not there yet. @throws InputError when it is, or cannot be written */
export async function writeNewTextFile(path: string, text: string): Promise<void> {
  await writeFile(path, text, { flag: 'wx' }).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'EEXIST') throw unwritable(path, error);
    throw new InputError(({ words }) => words.fresh.exists({ file: path }));
  });
}
