/** The files of the built practice page. */
import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import type { PackFile } from '@shedbook/pack';
import { PRACTICE_DIR } from './house.ts';
import { InputError } from './input-error.ts';

/**
 * Every file of the built practice page, in order of its path.
 * @throws InputError when it has not been built.
 */
export async function readPracticePage(folder: string = PRACTICE_DIR): Promise<readonly PackFile[]> {
  if (!existsSync(join(folder, 'index.html'))) {
    throw new InputError(({ words }) => words.build.noPage);
  }
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  const files = paths.map(async (path) => ({
    path: relative(folder, path).split(sep).join('/'),
    content: new Uint8Array(await readFile(path)),
  }));
  return (await Promise.all(files)).toSorted((a, b) => (a.path < b.path ? -1 : 1));
}
