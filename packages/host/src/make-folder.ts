/**
 * Making folders. Node's own way of making several at once calls a disk that can only be read a missing file, and goes
 * on for ever where a system makes no folders, as in `/proc`.
 */
import { mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

function isThere(error: unknown, path: string): boolean {
  return (error as NodeJS.ErrnoException).code === 'EEXIST' && statSync(path).isDirectory();
}

/**
 * Makes a folder, and those round it that are missing; one that is there already stays as it is.
 * @param mode who may do what with those that are made
 * @throws what the system says of the first that cannot be made
 */
export function makeFolder(path: string, mode = 0o777): void {
  try {
    mkdirSync(path, { mode });
  } catch (error) {
    if (isThere(error, path)) return;
    const around = dirname(path);
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT' || around === path) throw error;
    makeFolder(around, mode);
    mkdirSync(path, { mode });
  }
}
