/** A pack in one file. */
import { type Zippable, zipSync } from 'fflate';
import type { PackFile } from '../files/file.ts';

/** The folder that a pack is given out in. */
export const PACK_FOLDER = 'practice';

/** The first day that a ZIP file can name; the same files always give the same bytes. Source: APPNOTE.TXT 4.4.6. */
const FIRST_DAY = new Date(1980, 0, 1);

/** What is packed already gains nothing from being packed again. */
const PACKED = /\.(?:mp3|ogg|woff2|pdf)$/;

/** Files as one ZIP file, each under its path. */
export function zipFiles(files: readonly PackFile[]): Uint8Array {
  const entries: Zippable = {};
  for (const { path, content } of files) {
    entries[path] = [content, { level: PACKED.test(path) ? 0 : 9, mtime: FIRST_DAY }];
  }
  return zipSync(entries);
}

/** The files in one folder of a ZIP file. */
export function zipPack(files: readonly PackFile[], folder: string): Uint8Array {
  return zipFiles(files.map((file) => ({ ...file, path: `${folder}/${file.path}` })));
}
