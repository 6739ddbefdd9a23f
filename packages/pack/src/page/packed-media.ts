/** The files of a lesson as a pack carries them. */
import { type Lesson, mediaOf } from '@shedbook/core';
import type { PackFile } from '../files/file.ts';
import { type LessonMedia, pathInPack } from '../media/lesson-media.ts';
import type { PackMedium } from './pack.ts';

/** The files of a pack, and what it says of them; a file that is shown twice lies there once. */
export function packedMedia(
  lesson: Lesson,
  media: LessonMedia,
): { readonly told: readonly PackMedium[]; readonly files: readonly PackFile[] } {
  const found = mediaOf(lesson).flatMap(({ path }) => {
    const medium = media.get(path);
    return medium ? [{ of: path, medium }] : [];
  });
  const told = found.map(({ of, medium }): PackMedium => {
    const { content, size } = medium;
    return { of, path: pathInPack(medium), bytes: content.length, ...(size ?? {}) };
  });
  const files = new Map(found.map(({ medium }) => [pathInPack(medium), medium.content]));
  return { told, files: [...files].map(([path, content]) => ({ path, content })) };
}
