/**
 * Where the program's own folders lie: a clone and the installed package keep them at the same places under one root,
 * so that what is bundled finds them as well as what is compiled file by file.
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Name in the manifest of the root. */
const NAME = 'shedbook';

function isHouse(folder: string): boolean {
  const manifest = join(folder, 'package.json');
  return existsSync(manifest) && JSON.parse(readFileSync(manifest, 'utf8')).name === NAME;
}

/**
 * The nearest folder round a folder whose manifest is the program's own.
 * @throws RangeError when there is none.
 */
export function houseOf(folder: string): string {
  if (isHouse(folder)) return folder;
  const parent = dirname(folder);
  if (parent === folder) throw new RangeError('Internal error: no manifest of Shedbook round its own files');
  return houseOf(parent);
}

const HOUSE = houseOf(import.meta.dirname);

/** Where the desk is built to. */
export const DESK_DIR: string = join(HOUSE, 'apps/desk/dist/site');

/** Where the practice page is built to. */
export const PRACTICE_DIR: string = join(HOUSE, 'apps/practice/dist/site');

/** Where the words of the spoken count lie. */
export const SPOKEN_DIR: string = join(HOUSE, 'packages/sound/src/spoken');

/** Lessons for the first visit. */
export const DEMO_DIR: string = join(HOUSE, 'demo');
