/**
 * The files that a lesson shows, from a folder on the disk.
 *
 * Conventions: a link that leads out of the folder leaves it, as a path does.
 */
import { readFileSync, realpathSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import {
  type Lesson,
  type LookAtMedium,
  MEDIUM_BYTES,
  mediaOf,
  mediumPathFault,
  mediumType,
} from '@shedbook/core';
import { type LessonMedia, type LessonMedium, type MediumReading, readMedium } from '@shedbook/pack/media';
import { forPrinters } from './for-printers.ts';

/** Finds the file of a path in a lesson on the disk; null where there is none. */
export type FindFile = (path: string) => string | null;

/** The file that a path in a folder stands for; null where there is none, or it lies elsewhere. */
export function fileIn(folder: string): FindFile {
  return (path) => {
    if (mediumPathFault(path)) return null;
    try {
      const file = realpathSync(join(folder, path));
      const isInside = file.startsWith(realpathSync(folder) + sep);
      return isInside && statSync(file).isFile() ? file : null;
    } catch {
      return null;
    }
  };
}

function read(find: FindFile, path: string): MediumReading {
  const file = find(path);
  if (file === null) return { file: null, fault: 'missing' };
  const most = MEDIUM_BYTES[mediumType(path)?.kind ?? 'picture'];
  if (statSync(file).size > most) return { file: null, fault: 'too-large' };
  return readMedium(path, readFileSync(file));
}

/** What looks at the files of a lesson, each once. */
export function lookAtFiles(find: FindFile): LookAtMedium {
  const known = new Map<string, MediumReading['fault']>();
  return (path) => {
    const before = known.get(path);
    if (before !== undefined) return before;
    const { fault } = read(find, path);
    known.set(path, fault);
    return fault;
  };
}

/** Reads the files that a lesson shows; those with a fault are left out. */
export async function readMedia(lesson: Lesson, find: FindFile): Promise<LessonMedia> {
  const found = new Map<string, LessonMedium>();
  for (const { path } of mediaOf(lesson)) {
    const { file } = read(find, path);
    if (file) found.set(path, { ...file, png: await forPrinters(file) });
  }
  return found;
}
