/** Text files that a command is given. */
import { readFile } from 'node:fs/promises';
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
