/** Text files that a command is given or writes. */
import { readFile, writeFile } from 'node:fs/promises';
import { InputError, reasonOf } from '@shedbook/host';
import type { CliWords } from '@shedbook/words';

/**
 * Reads a text file.
 * @param expected what should be there, in the reader's words
 * @throws InputError when it cannot be read.
 */
export function readTextFile(
  path: string,
  expected: (words: CliWords['expected']) => string,
): Promise<string> {
  return readFile(path, 'utf8').catch((error: unknown) => {
    throw new InputError((to) =>
      to.words.unreadable({ file: path, why: reasonOf(error, to), expected: expected(to.words.expected) }),
    );
  });
}

/** The error for a file that cannot be written. */
const unwritable = (path: string, error: unknown) =>
  new InputError((to) => to.words.unwritable({ file: path, why: reasonOf(error, to) }));

/** Writes a text file, over what was there. @throws InputError when it cannot be written */
export async function writeTextFile(path: string, text: string): Promise<void> {
  await writeFile(path, text).catch((error: unknown) => {
    throw unwritable(path, error);
  });
}

/** Writes a text file that is not there yet. @throws InputError when it is, or cannot be written */
export async function writeNewTextFile(path: string, text: string): Promise<void> {
  await writeFile(path, text, { flag: 'wx' }).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'EEXIST') throw unwritable(path, error);
    throw new InputError(({ words }) => words.fresh.exists({ file: path }));
  });
}
